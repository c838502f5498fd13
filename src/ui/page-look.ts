// How the page is laid out: the rod and the sheet in the middle, the working at the right or from below, the footing in view.
import { css } from 'lit';

export const pageLook = css`
  :host {
    display: grid;
    height: 100dvh;
    grid-template:
      'header header' auto
      'page working' minmax(0, 1fr)
      'watched watched' auto
      'footing footing' auto / minmax(0, 1fr) 23.5rem;
    background: var(--paper);
  }
  job-header {
    grid-area: header;
  }
  /* Over the foot of the page: nothing that is read moves when something is told. */
  .told {
    grid-area: page;
    align-self: end;
    z-index: 3;
  }
  .told p {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem 0.9rem;
    align-items: center;
    margin: 0;
    padding: 0.45rem 1.5rem;
    background: var(--wash);
    border-top: 1px solid var(--rule);
    font-size: var(--small);
  }
  .told p span {
    max-width: 90ch;
  }
  .scroll {
    grid-area: page;
    position: relative;
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    overflow: auto;
    overscroll-behavior: contain;
    scrollbar-width: thin;
    scrollbar-color: var(--rule) transparent;
  }
  story-rod {
    position: sticky;
    top: 0;
  }
  .parts {
    max-width: 66rem;
    padding: 1.75rem 1.25rem 40vh 0.25rem;
    min-width: 0;
  }
  aside {
    grid-area: working;
    min-height: 0;
    border-left: 1px solid var(--rule);
    background: var(--bench);
  }
  aside .inside {
    height: 100%;
    overflow: auto;
    scrollbar-width: thin;
    scrollbar-color: var(--rule) transparent;
  }
  .drop {
    position: fixed;
    height: 0;
    margin-top: -1px;
    border-top: 2px solid var(--keel);
    pointer-events: none;
    z-index: 4;
  }
  .pull {
    display: none;
  }
  watched-strip {
    grid-area: watched;
  }
  job-footing {
    grid-area: footing;
  }
  guide-page,
  alternatives-sheet {
    grid-area: working;
    min-width: 0;
    min-height: 0;
  }
  @media screen and (min-width: 1281px) {
    /* Beside the notebook, in the place of the working. */
    :host([alternatives-sheet]) {
      --value: 8.5rem;
      --name: 10rem;
      --gutter: 7.5rem;
      grid-template-columns: minmax(0, 1fr) clamp(33rem, 42vw, 46rem);
    }
    :host([guide]) {
      --value: 8.5rem;
      --name: 10rem;
      --gutter: 7.5rem;
      grid-template-columns: minmax(0, 1fr) 33rem;
    }
    :host([guide]) aside,
    :host([alternatives-sheet]) aside {
      display: none;
    }
  }
  @media screen and (max-width: 1280px) and (min-width: 1081px) {
    :host {
      --value: 8.5rem;
      --name: 10rem;
      --gutter: 7.5rem;
      grid-template-columns: minmax(0, 1fr) 20rem;
    }
  }
  @media screen and (max-width: 1080px) {
    :host {
      grid-template:
        'header' auto
        'page' minmax(0, 1fr)
        'working' auto
        'watched' auto
        'footing' auto / minmax(0, 1fr);
    }
    aside {
      border-left: 0;
      border-top: 1px solid var(--rule);
      display: flex;
      flex-direction: column;
      max-height: 68dvh;
    }
    .pull {
      display: flex;
      gap: 0.6rem;
      align-items: baseline;
      width: 100%;
      min-height: 2.5rem;
      padding: 0.5rem 0.75rem;
      font-size: var(--small);
    }
    .pull span {
      color: var(--pencil);
    }
    .pull::after {
      content: '';
      margin-left: auto;
      width: 0.5rem;
      height: 0.5rem;
      border: solid var(--graphite);
      border-width: 1.5px 0 0 1.5px;
      transform: rotate(45deg) translate(0.15rem, 0.15rem);
    }
    aside[up] .pull::after {
      transform: rotate(225deg) translate(0.15rem, 0.15rem);
    }
    aside .inside {
      display: none;
      height: auto;
    }
    aside[up] .inside {
      display: block;
    }
  }
  @media screen and (max-width: 760px) {
    .parts {
      padding: 1rem 0.75rem 40vh 0.6rem;
    }
    .told p {
      padding: 0.45rem 0.75rem;
    }
  }
  /* A phone whose keyboard is up, or one that lies on its side: room for what is written. */
  @media screen and (max-width: 1080px) and (max-height: 480px) {
    aside:not([up]) {
      display: none;
    }
  }
  @media print {
    :host {
      display: block;
      height: auto;
    }
    .scroll {
      display: block;
      overflow: visible;
    }
    .parts {
      max-width: none;
      padding: 0;
    }
    aside,
    .told {
      display: none;
    }
    /* With the guide open it is the guide that is printed; so with a sheet named here. */
    :host([guide]:not([record], [snapshots], [show-how], [moves])) > :not(guide-page),
    :host([alternatives-sheet]:not([record], [snapshots], [show-how], [moves]))
      > :not(alternatives-sheet),
    :host([show-how]) > :not(show-how),
    :host([snapshots]) > :not(snapshot-sheet),
    :host([record]) > :not(record-sheet),
    :host([moves]) > :not(moves-sheet),
    :host([client]) > :not(client-sheet) {
      display: none;
    }
  }
`;
