// How what is watched looks: slips held by a clip above the footing; on a phone one line.
import { css } from 'lit';

export const watchedLook = css`
  :host {
    display: block;
    min-width: 0;
    border-top: 1px solid var(--rule);
    background: var(--bench);
  }
  section {
    display: flex;
    flex-wrap: wrap;
    align-items: stretch;
    gap: 0 0.5rem;
    max-height: 8.2rem;
    overflow-y: auto;
    padding: 0 1.5rem;
    scrollbar-width: thin;
  }
  ul {
    display: flex;
    flex-wrap: wrap;
    flex: 1;
    min-width: 0;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li {
    position: relative;
    display: grid;
    grid-template: 'name go' auto 'now now' auto 'begun begun' auto / minmax(0, 1fr) auto;
    column-gap: 0.9rem;
    min-width: 11rem;
    padding: 0.2rem 1.1rem 0.3rem 0.7rem;
    border-right: 1px solid var(--rule);
  }
  /* Two ticks across the edge, as a carpenter marks what two pieces have in common. */
  li::before {
    content: '';
    position: absolute;
    left: -0.15rem;
    top: 0.5rem;
    width: 0.55rem;
    height: 0.32rem;
    border: solid var(--graphite);
    border-width: 1.5px 0;
    transform: skewY(-18deg);
  }
  .name {
    grid-area: name;
    font-size: var(--small);
    color: var(--pencil);
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .name button {
    min-height: 24px;
    max-width: 100%;
    overflow: hidden;
    text-overflow: ellipsis;
    text-align: left;
  }
  .go {
    grid-area: go;
    font-size: var(--tiny);
  }
  .now {
    grid-area: now;
    white-space: nowrap;
  }
  .now b {
    font-weight: 650;
  }
  .by {
    margin-left: 0.35rem;
    color: var(--keel);
    font-weight: 650;
  }
  .by.not {
    color: var(--pencil);
    font-weight: 400;
  }
  .begun {
    grid-area: begun;
    font-size: var(--tiny);
    color: var(--pencil);
    white-space: nowrap;
  }
  .acts {
    display: flex;
    gap: 0.2rem 1rem;
    align-items: center;
    flex-wrap: wrap;
    align-content: center;
    margin: 0;
  }
  .told {
    flex: 1 0 100%;
    margin: 0;
    padding: 0.25rem 0 0.35rem;
    font-size: var(--small);
  }
  .trouble {
    color: var(--keel);
  }
  .fold {
    display: none;
  }
  @media screen and (max-width: 760px) {
    section {
      display: block;
      max-height: 45dvh;
      padding: 0;
    }
    .fold {
      display: flex;
      gap: 0.6rem;
      align-items: center;
      width: 100%;
      min-height: 2.25rem;
      padding: 0.25rem 0.75rem;
      font-size: var(--small);
    }
    .line {
      flex: 1;
      min-width: 0;
      overflow: hidden;
      text-overflow: ellipsis;
      white-space: nowrap;
      color: var(--pencil);
    }
    .line b {
      color: var(--graphite);
    }
    .each + .each {
      margin-left: 0.6rem;
      padding-left: 0.6rem;
      border-left: 1px solid var(--rule);
    }
    .line .by {
      margin-left: 0;
    }
    .fold::after {
      content: '';
      flex: none;
      width: 0.5rem;
      height: 0.5rem;
      border: solid var(--graphite);
      border-width: 1.5px 0 0 1.5px;
      transform: rotate(45deg) translate(0.15rem, 0.15rem);
    }
    :host([unfolded]) .fold::after {
      transform: rotate(225deg) translate(0.15rem, 0.15rem);
    }
    :host(:not([unfolded])) :is(ul, .acts) {
      display: none;
    }
    :host(:not([unfolded])) .all,
    :host([unfolded]) .line {
      display: none;
    }
    .all {
      flex: 1;
      color: var(--pencil);
    }
    ul {
      display: block;
    }
    li {
      grid-template: 'name now go' auto 'begun begun begun' auto / minmax(0, 1fr) auto auto;
      padding: 0.2rem 0.75rem;
      border: 0;
      border-bottom: 1px solid var(--hair);
    }
    li::before {
      display: none;
    }
    .name,
    .name button {
      white-space: normal;
    }
    .acts,
    .told {
      padding: 0.3rem 0.75rem;
    }
  }
  @media screen and (max-width: 1080px) and (max-height: 480px) {
    :host(:not([unfolded])) :is(ul, .acts) {
      display: none;
    }
  }
  @media print {
    :host {
      background: none;
      break-inside: avoid;
    }
    section {
      max-height: none;
      padding: 0;
    }
    .acts,
    .go,
    .fold {
      display: none;
    }
    .name button {
      text-decoration: none;
    }
  }
`;
