// How the working looks: steps set in like risers, numbers large, words small above them.
import { css } from 'lit';

export const workingLook = css`
  :host {
    display: block;
    padding: 1.25rem 1.4rem 2rem;
  }
  .empty {
    margin: 0;
    color: var(--pencil);
  }
  p {
    margin: 0;
  }
  h2 {
    margin: 0;
    font-size: 1.05rem;
    font-weight: 700;
    outline-offset: 4px;
  }
  .answer {
    font-size: 1.55rem;
    line-height: 1.2;
    font-weight: 750;
    letter-spacing: -0.01em;
    overflow-wrap: anywhere;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem;
    margin: 0.7rem 0 0;
  }
  .lesser {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 0.3rem 0.8rem;
    align-items: center;
    margin-left: 0.4rem;
  }
  .flight {
    list-style: none;
    margin: 1.1rem 0 0;
    padding: 0;
  }
  .flight > li {
    padding: 0.5rem 0;
    border-top: 1px solid var(--rule);
  }
  .step + .step {
    margin-top: 0.7rem;
  }
  .words {
    font-size: var(--small);
    color: var(--pencil);
  }
  .words .tie {
    color: var(--graphite);
    font-weight: 600;
  }
  .numbers {
    font-size: 1rem;
    overflow-wrap: anywhere;
  }
  s {
    color: var(--pencil);
    text-decoration-thickness: 1px;
  }
  .beside {
    display: block;
    font-size: var(--tiny);
    color: var(--pencil);
    max-width: 48ch;
  }
  .caution {
    color: var(--keel);
  }
  .parts {
    margin: 0.25rem 0 0 0.7rem;
    padding-left: 0.7rem;
    border-left: 1px solid var(--rule);
    display: grid;
    gap: 0.35rem;
  }
  .given {
    font-size: var(--small);
  }
  .given .tie {
    font-weight: 500;
  }
  summary {
    cursor: pointer;
    list-style: none;
    display: flex;
    gap: 0.6rem;
    align-items: baseline;
    font-size: var(--small);
    /* High enough for a finger. */
    padding: 0.22rem 0;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  summary::before {
    content: '';
    flex: none;
    width: 0.5rem;
    height: 0.5rem;
    border: solid var(--pencil);
    border-width: 0 1.5px 1.5px 0;
    align-self: center;
  }
  details[open] > summary::before {
    border-width: 1.5px 0 0 1.5px;
  }
  summary span {
    color: var(--pencil);
  }
  details > .step {
    margin-top: 0.2rem;
  }
  .into {
    margin-top: 0.75rem;
    padding-top: 0.6rem;
    border-top: 1px solid var(--rule);
    font-size: var(--small);
    color: var(--pencil);
  }
  .into .tie {
    color: var(--graphite);
    font-weight: 600;
  }
`;
