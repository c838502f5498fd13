// What all of the job record looks like: fields in a row where there is room and below each other where there is none.
import { css } from 'lit';

export const recordLook = css`
  :host {
    display: block;
  }
  h3 {
    margin: 1.1rem 0 0.4rem;
    font-size: var(--small);
    font-weight: 600;
    color: var(--pencil);
  }
  h3:first-child {
    margin-top: 0;
  }
  p {
    margin: 0 0 0.7rem;
  }
  ul,
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .where {
    display: block;
    font-size: var(--tiny);
    font-weight: 400;
    color: var(--pencil);
  }
  .trouble,
  .fault,
  .past {
    color: var(--keel);
  }
  .said:empty {
    display: none;
  }
  /* Fields */
  .line,
  .chosen {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: 0.5rem 0.7rem;
    margin-bottom: 0.9rem;
  }
  .chosen {
    align-items: flex-end;
  }
  .field {
    display: grid;
    gap: 0.1rem;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  .field input,
  .field select,
  .field textarea,
  .done {
    min-height: 1.9rem;
    padding: 0.15rem 0.4rem;
    font-size: 0.9375rem;
    color: var(--graphite);
    background: var(--lifted);
    border: 1px solid var(--faint);
    border-radius: 2px;
    min-width: 0;
    width: 100%;
  }
  [aria-invalid='true'] {
    border-color: var(--keel) !important;
    box-shadow: 0 0 0 1px var(--keel);
  }
  .fault {
    max-width: 16rem;
    font-size: var(--tiny);
  }
  .short {
    width: 7.2rem;
  }
  .few {
    width: 5rem;
  }
  .money {
    width: 7rem;
  }
  .chosen .money {
    width: 14rem;
  }
  .wide {
    flex: 1 1 11rem;
  }
  .whole {
    margin-bottom: 0.7rem;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.4rem 0.7rem;
    flex: 1 0 100%;
    margin-bottom: 0.6rem;
  }
  .line .acts {
    margin: 0;
  }
  .comes {
    flex: 1;
    text-align: right;
    font-weight: 600;
  }
  .pick {
    cursor: pointer;
    position: relative;
  }
  .pick:focus-within {
    outline: 2px solid var(--graphite);
    outline-offset: 2px;
  }
  fieldset {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 1.1rem;
    margin: 0 0 0.9rem;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  fieldset label {
    display: flex;
    gap: 0.4rem;
    align-items: center;
    min-height: 1.75rem;
  }
  @media (pointer: coarse) {
    .field input,
    .field select,
    .done {
      min-height: 2.75rem;
    }
  }
  @media screen and (max-width: 760px) {
    .field {
      flex: 1 1 40%;
      width: auto;
    }
    .wide,
    .chosen .money {
      flex-basis: 100%;
    }
  }
  @media print {
    .acts,
    .said,
    .chosen {
      display: none;
    }
  }
`;
