// What components share in looks: buttons, links in text, rings of a pencil, words for screen readers only.
import { css } from 'lit';

export const look = css`
  :host {
    box-sizing: border-box;
  }
  *,
  *::before,
  *::after {
    box-sizing: inherit;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  button,
  input,
  textarea,
  select {
    font: inherit;
    font-variant-numeric: inherit;
    color: inherit;
    letter-spacing: inherit;
  }
  button {
    background: none;
    border: 0;
    margin: 0;
    padding: 0;
    text-align: inherit;
    cursor: pointer;
  }
  button:disabled {
    cursor: default;
    color: var(--faint);
  }
  :focus-visible {
    outline: 2px solid var(--graphite);
    outline-offset: 2px;
    border-radius: 2px;
  }
  a {
    color: inherit;
  }
  .act {
    display: inline-flex;
    align-items: center;
    min-height: 1.75rem;
    padding: 0.125rem 0.625rem;
    border: 1px solid var(--rule);
    border-radius: 2px;
    background: var(--lifted);
    font-size: var(--small);
    line-height: 1.25;
  }
  .act:hover:not(:disabled) {
    border-color: var(--graphite);
  }
  .act.first {
    border-color: var(--graphite);
    font-weight: 600;
  }
  .plain {
    min-height: 1.5rem;
    font-size: var(--small);
    color: var(--pencil);
    text-decoration: underline;
    text-decoration-color: var(--rule);
    text-underline-offset: 0.2em;
  }
  .plain:hover:not(:disabled) {
    color: var(--graphite);
    text-decoration-color: currentcolor;
  }
  .tie {
    color: inherit;
    text-decoration: underline dotted 1px;
    text-decoration-color: var(--faint);
    text-underline-offset: 0.22em;
    cursor: pointer;
  }
  .tie:hover {
    text-decoration: underline solid 1px;
    text-decoration-color: currentcolor;
  }
  .ringed {
    border: 1.5px solid var(--keel);
    border-radius: 46% 54% 50% 50% / 58% 52% 60% 48%;
    padding: 0 0.3em;
    margin: 0 -0.1em;
    -webkit-box-decoration-break: clone;
    box-decoration-break: clone;
  }
  .small {
    font-size: var(--small);
    color: var(--pencil);
  }
  /* Two strokes of a pencil beside what can be taken and moved. */
  .grip {
    position: absolute;
    width: 0.75rem;
    cursor: grab;
    touch-action: none;
    opacity: 0;
    background: linear-gradient(
      to right,
      transparent 3px,
      var(--faint) 3px 4.5px,
      transparent 4.5px 7px,
      var(--faint) 7px 8.5px,
      transparent 8.5px
    );
    background-clip: content-box;
    padding: 0.25rem 0;
  }
  :hover > .grip,
  .grip:hover {
    opacity: 1;
  }
  .grip:active {
    cursor: grabbing;
  }
  @media (hover: none) {
    :host([chosen]) .grip,
    header > .grip {
      opacity: 1;
    }
  }
  @media print {
    .grip {
      display: none;
    }
  }
  .heard {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  kbd {
    font: inherit;
    font-weight: 400;
    font-size: var(--tiny);
    color: var(--pencil);
    margin-left: 0.5rem;
  }
  @media (pointer: coarse) {
    kbd {
      display: none;
    }
  }
  @media (pointer: coarse) {
    .act {
      min-height: 2.75rem;
    }
    .plain {
      min-height: 2.25rem;
    }
  }
  @media print {
    :focus-visible {
      outline: 0;
    }
  }
  @media (forced-colors: active) {
    .act,
    .ringed {
      border-color: ButtonText;
    }
  }
`;
