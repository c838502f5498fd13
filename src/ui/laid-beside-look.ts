// How a sheet looks that is laid beside the notebook, or over it where there is no room: its frame and its top.
import { css } from 'lit';

export const laidBesideLook = css`
  :host {
    display: block;
  }
  :host(:not([open])) {
    display: none;
  }
  dialog {
    position: static;
    width: 100%;
    max-width: none;
    height: 100%;
    max-height: none;
    margin: 0;
    padding: 0;
    border: 0;
    border-left: 1px solid var(--rule);
    background: var(--bench);
    color: var(--graphite);
    overflow: hidden;
  }
  dialog[open] {
    display: grid;
    grid-template-rows: auto minmax(0, 1fr);
  }
  dialog.over {
    position: absolute;
    inset: 0;
    width: 100vw;
    height: 100dvh;
    border: 0;
  }
  .top {
    display: flex;
    gap: 0.4rem 1rem;
    align-items: baseline;
    padding: 0.7rem 1.1rem 0.5rem;
    border-bottom: 1.5px solid var(--graphite);
  }
  .top > :last-child {
    margin-left: auto;
    white-space: nowrap;
  }
  h2 {
    margin: 0;
    font-size: 1.1rem;
  }
`;
