// How a row looks: quantity first, hung right against the names, money at the far right.
import { css } from 'lit';

export const cellLook = css`
  :host {
    display: block;
    position: relative;
    scroll-margin: 0.5rem;
    padding: 0 0.5rem;
    border-bottom: 1px solid transparent;
  }
  :host([chosen]) {
    border-bottom: 2px solid var(--graphite);
    margin-bottom: -1px;
  }
  .row {
    display: grid;
    grid-template-columns: var(--value) minmax(6rem, var(--name)) minmax(0, 1fr) var(--money);
    column-gap: 0.9rem;
    align-items: baseline;
    padding: 0.06rem 0;
    min-height: 1.75rem;
  }
  @media (hover: hover) {
    :host(:not([open])) .row:hover {
      background: color-mix(in srgb, var(--wash) 55%, transparent);
    }
  }
  .grip {
    left: -0.35rem;
    top: 0.1rem;
    height: 1.5rem;
  }
  .value {
    min-width: 0;
  }
  .amount {
    border-radius: 1px;
  }
  .amount.check {
    font-weight: 600;
    display: inline-block;
  }
  .amount.check::before {
    content: '';
    display: inline-block;
    width: 0.36em;
    height: 0.68em;
    margin-right: 0.5em;
    border: solid currentcolor;
    border-width: 0 1.5px 1.5px 0;
    transform: rotate(40deg) translate(-0.06em, -0.06em);
  }
  .amount.fails::before {
    display: none;
  }
  .amount.open {
    min-width: 3ch;
    text-decoration: underline dashed 1.5px;
  }
  .name {
    overflow-wrap: anywhere;
  }
  .how {
    min-width: 0;
    overflow-wrap: anywhere;
  }
  :host([chosen]) .words {
    cursor: text;
  }
  /* Only cost lines reach the column of money. */
  .how.wide,
  .how.writing {
    grid-column: 3 / 5;
  }
  story-line.name {
    justify-self: stretch;
  }
  .ends {
    margin-right: 0.6rem;
    font-size: var(--small);
    color: var(--pencil);
  }
  .ends svg {
    margin-right: 0.4rem;
  }
  .ends path {
    fill: none;
    stroke: currentcolor;
    stroke-width: 1;
  }
  .ends .plain {
    stroke-width: 2;
  }
  .source {
    font-size: var(--small);
    color: var(--pencil);
  }
  .source.beside {
    margin-left: 0.5rem;
  }
  .source.none {
    font-style: italic;
  }
  .money .amount {
    font-weight: inherit;
  }
  .money {
    text-align: right;
    white-space: nowrap;
  }
  .money.price {
    color: var(--pencil);
  }
  .money.last {
    color: var(--pencil);
    font-style: italic;
  }
  .note {
    margin: 0 0 0.35rem calc(var(--value) + 0.9rem);
    max-width: 62ch;
  }
  .note.caution b {
    color: var(--keel);
  }
  .note.wrong,
  .note.which {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.6rem;
    align-items: baseline;
  }
  .note.count {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.8rem;
    align-items: baseline;
  }
  .note.hand {
    max-width: none;
    display: flex;
    flex-wrap: wrap;
    gap: 0 1rem;
    align-items: baseline;
  }
  .note.hand b {
    color: var(--keel);
  }
  .lay {
    margin: 0.2rem 0.5rem 0.6rem calc(var(--value) + 0.9rem);
  }
  @media screen and (max-width: 760px) {
    .lay {
      margin: 0.2rem 0 0.6rem;
    }
    :host {
      padding: 0 0.25rem;
    }
    .row {
      grid-template-columns: 5.75rem minmax(0, 1fr) auto;
      column-gap: 0.7rem;
      padding: 0.35rem 0;
    }
    .value {
      grid-area: 1 / 1 / 3 / 2;
    }
    .name {
      grid-area: 1 / 2;
    }
    .how,
    .how.wide {
      grid-area: 2 / 2 / 3 / 4;
      font-size: var(--small);
    }
    .money {
      grid-area: 1 / 3;
    }
    .how.writing {
      grid-area: 3 / 1 / 4 / 4;
      font-size: 1rem;
      margin-top: 0.4rem;
    }
    .note {
      margin-left: 0;
    }
  }
  @media (forced-colors: active) {
    :host(:not([chosen])) {
      border-bottom-color: Canvas;
    }
  }
  @media print {
    :host([chosen]) {
      border-bottom-color: transparent;
    }
    :host {
      break-inside: avoid;
    }
    .row {
      padding: 0.05rem 0;
      min-height: 0;
    }
    .note .act,
    .note .plain,
    .how .plain,
    .note.count {
      display: none;
    }
  }
`;
