// How a step that is asked looks: the line as large as the numbers above it.
import { css } from 'lit';

export const askLook = css`
  :host {
    display: block;
  }
  label {
    display: block;
    margin-bottom: 0.3rem;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    align-items: stretch;
  }
  input {
    flex: 0 1 12em;
    min-width: 6em;
    padding: 0.1em 0.4em;
    font-size: 1.25em;
    font-weight: 600;
    background: var(--lifted);
    border: 0;
    border-bottom: 2px solid var(--graphite);
  }
  [aria-invalid='true'] {
    border-bottom-color: var(--keel);
  }
  .act {
    font-size: 0.75em;
    padding: 0.2em 0.9em;
  }
  p,
  ul {
    margin: 0.5rem 0 0;
    max-width: 44em;
  }
  ul {
    padding-left: 1.2em;
  }
  .how {
    margin-top: 0.3rem;
    font-size: max(0.7em, var(--small));
    color: var(--pencil);
  }
  [role='alert'] {
    font-size: 0.85em;
  }
  [role='alert'] b {
    color: var(--keel);
  }
`;
