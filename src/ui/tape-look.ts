// How the length of tape looks: a ruled blade in paper and graphite, the tick where it began in keel.
import { css } from 'lit';

export const tapeLook = css`
  :host {
    display: block;
    margin: 0.1rem 0 0.6rem calc(var(--value) + 0.9rem);
    max-width: 34rem;
  }
  .none {
    margin: 0;
    font-size: var(--small);
    color: var(--pencil);
  }
  .tape {
    position: relative;
    height: 3.75rem;
    cursor: ew-resize;
    touch-action: none;
    user-select: none;
  }
  .tape:focus-visible {
    outline: 0;
  }
  .tape:focus-visible .blade {
    stroke-width: 2.5px;
  }
  svg {
    display: block;
    width: 100%;
    height: 3rem;
    overflow: visible;
  }
  line {
    vector-effect: non-scaling-stroke;
  }
  .blade {
    fill: var(--lifted);
    stroke: var(--graphite);
    vector-effect: non-scaling-stroke;
  }
  .tick {
    stroke: var(--pencil);
    stroke-width: 1px;
  }
  .began {
    stroke: var(--keel);
    stroke-width: 2px;
    stroke-dasharray: 4 2;
  }
  .now {
    stroke: var(--graphite);
    stroke-width: 3px;
  }
  .end,
  .began-at {
    position: absolute;
    font-size: var(--tiny);
    color: var(--pencil);
    pointer-events: none;
    white-space: nowrap;
  }
  .end {
    bottom: 1.15rem;
  }
  .low {
    left: 0.6rem;
  }
  .high {
    right: 0.6rem;
  }
  .began-at {
    bottom: -0.1rem;
    transform: translateX(-50%);
    color: var(--keel);
  }
  .beside {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.75rem;
    align-items: center;
    font-size: var(--small);
    margin-top: 0.15rem;
  }
  .beside b {
    font-size: 1rem;
  }
  .acts {
    display: inline-flex;
    gap: 0.4rem;
    margin-left: auto;
  }
  @media screen and (max-width: 760px) {
    :host {
      margin-left: 0;
    }
  }
  @media print {
    :host {
      display: none;
    }
  }
`;
