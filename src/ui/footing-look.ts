// How the footing looks: always in view, in one row where there is room.
import { css } from 'lit';

export const footingLook = css`
  :host {
    display: flex;
    align-items: center;
    gap: 1.75rem;
    min-height: var(--foot);
    padding: 0.4rem 1.5rem;
    border-top: 2px solid var(--graphite);
    background: var(--paper);
  }
  .strip {
    flex: 0 1 20rem;
    min-width: 0;
    height: 1.4rem;
    overflow: visible;
    color: var(--graphite);
  }
  .frame {
    fill: none;
    stroke: currentcolor;
    stroke-width: 1;
  }
  dl {
    display: flex;
    gap: 1.6rem;
    margin: 0;
    flex: 1 0 auto;
    min-width: 0;
  }
  dt {
    display: flex;
    align-items: center;
    gap: 0.35rem;
    font-size: var(--tiny);
    color: var(--pencil);
    white-space: nowrap;
  }
  dt svg {
    width: 0.95rem;
    height: 0.7rem;
    color: var(--graphite);
    flex: none;
  }
  dd {
    margin: 0;
    font-weight: 600;
    white-space: nowrap;
  }
  .none dd {
    color: var(--pencil);
    font-weight: 400;
  }
  .direct {
    padding-left: 1.6rem;
    border-left: 1px solid var(--rule);
  }
  .price {
    display: grid;
    grid-template: 'by label' auto 'sum sum' auto / 1fr auto;
    column-gap: 0.75rem;
    align-items: baseline;
    margin-left: auto;
    text-align: right;
    white-space: nowrap;
  }
  .price p {
    grid-area: label;
  }
  .price strong {
    grid-area: sum;
  }
  .watch {
    align-self: end;
    margin-left: -1.2rem;
  }
  .moved {
    grid-area: by;
    font-size: var(--small);
    color: var(--pencil);
  }
  .price p {
    margin: 0;
    font-size: var(--small);
    color: var(--pencil);
  }
  .price strong {
    display: block;
    font-size: 1.6rem;
    line-height: 1.1;
    font-weight: 750;
    letter-spacing: -0.01em;
  }
  .beside {
    display: grid;
    margin: 0;
    padding-left: 0.75rem;
    border-left: 1px solid var(--rule);
    font-size: var(--small);
    color: var(--pencil);
    flex: 0 0 auto;
    max-width: 18rem;
  }
  .snapshot {
    display: flex;
    gap: 0.3em;
  }
  .beside b {
    white-space: nowrap;
    color: var(--graphite);
  }
  .beside b.by {
    color: var(--keel);
  }
  .beside.accepted {
    border-left: 4px solid var(--keel);
  }
  .beside.accepted .snapshot {
    color: var(--graphite);
    font-weight: 650;
  }
  .beside span {
    white-space: nowrap;
  }
  .beside .called {
    min-width: 2rem;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .by {
    color: var(--keel);
    font-weight: 600;
  }
  @media screen and (max-width: 1180px) {
    .strip {
      flex-basis: 10rem;
    }
    :host {
      gap: 1.1rem;
    }
    .watch {
      margin-left: -0.6rem;
    }
    dl {
      gap: 1.1rem;
    }
    .none {
      display: none;
    }
  }
  @media screen and (max-width: 1080px) {
    .strip {
      flex-basis: 5rem;
    }
    dl:has(~ .beside) .direct {
      display: none;
    }
    .beside {
      max-width: 13rem;
    }
  }
  @media screen and (max-width: 940px) and (min-width: 761px) {
    .strip:has(~ .beside),
    .price:has(~ .beside) .moved {
      display: none;
    }
    dl {
      gap: 0.8rem;
    }
  }
  @media screen and (max-width: 760px) {
    :host {
      flex-wrap: wrap;
      gap: 0.15rem 1rem;
      padding: 0.35rem 0.75rem 0.45rem;
    }
    .strip {
      flex: 1 1 100%;
      height: 0.6rem;
    }
    dl {
      flex-shrink: 1;
      gap: 0.9rem;
      overflow: hidden;
    }
    dt svg,
    .direct {
      display: none;
    }
    dt,
    dd {
      font-size: 0.71875rem;
      line-height: 1.3;
    }
    .beside {
      display: flex;
      flex: 1 1 100%;
      gap: 0.6rem;
      max-width: none;
      padding-left: 0.4rem;
      font-size: 0.71875rem;
      order: 3;
    }
    .price {
      grid-template: 'by label sum' auto / 1fr auto auto;
      column-gap: 0.5rem;
      white-space: normal;
    }
    .price strong {
      font-size: 1.25rem;
    }
    .watch {
      margin-left: -0.4rem;
      min-height: 1.5rem;
      font-size: var(--tiny);
    }
  }
  @media screen and (max-width: 1080px) and (max-height: 480px) {
    :host {
      min-height: 0;
      padding: 0.2rem 0.75rem;
    }
    .strip,
    dl,
    .beside {
      display: none;
    }
  }
  @media print {
    .watch {
      display: none;
    }
    :host {
      border-top: 2px solid #000;
      padding: 0.5rem 0;
      break-inside: avoid;
    }
  }
`;
