// How the rod looks: the one thing on the page that is made of wood.
import { css } from 'lit';

export const rodLook = css`
  :host {
    display: block;
    position: relative;
    box-sizing: border-box;
    width: calc(var(--gutter) + var(--rod) + 16px);
    touch-action: pan-y;
    user-select: none;
    cursor: grab;
  }
  :host(:active) {
    cursor: grabbing;
  }
  :host([narrow]) {
    width: 18px;
  }
  :host(:focus-visible) {
    outline: 2px solid var(--graphite);
    outline-offset: -2px;
  }
  svg {
    display: block;
    overflow: visible;
  }
  .wood {
    fill: var(--wood);
  }
  .grain {
    fill: none;
    stroke: var(--wood-grain);
    stroke-width: 0.75;
  }
  .folded {
    fill: var(--wood-end);
    opacity: 0.72;
  }
  .edge {
    fill: none;
    stroke: var(--wood-edge);
  }
  .marks {
    fill: none;
    stroke: var(--wood-mark);
    stroke-width: 1;
  }
  .marks.close {
    stroke-width: 0.5;
    opacity: 0.6;
  }
  .marks.part {
    stroke-width: 1.75;
  }
  .cut {
    fill: var(--paper);
  }
  .saw {
    fill: none;
    stroke: var(--wood-mark);
    stroke-width: 1.25;
  }
  .saw.left {
    stroke: var(--keel);
  }
  .foot {
    fill: none;
    stroke: var(--keel);
    stroke-width: 2.25;
    stroke-linecap: round;
  }
  .lead {
    fill: none;
    stroke: var(--keel);
    stroke-width: 0.75;
  }
  .label {
    position: absolute;
    left: 0.5rem;
    right: calc(var(--rod) + 16px + 11px);
    height: 29px;
    font-size: 0.71875rem;
    line-height: 14px;
    text-align: right;
    color: var(--pencil);
    display: flex;
    flex-direction: column;
    justify-content: center;
  }
  .label span {
    overflow: hidden;
    white-space: nowrap;
    text-overflow: ellipsis;
  }
  .label.part span:first-child {
    color: var(--graphite);
    font-weight: 700;
  }
  .label.from {
    color: var(--keel);
    cursor: pointer;
  }
  .label.rest {
    bottom: 0;
  }
  .label.from .value {
    font-weight: 600;
  }
  @media print {
    :host {
      display: none;
    }
  }
  @media (forced-colors: active) {
    .marks,
    .saw,
    .foot,
    .edge {
      stroke: CanvasText;
    }
    .wood,
    .cut {
      fill: Canvas;
    }
  }
`;
