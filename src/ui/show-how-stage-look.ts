// How the steps look: letters for a group, a story rod down the left with a mark for each step that was shown, and the step
// that stands there now set out beside its crow's-foot.
import { css } from 'lit';

export const showHowStageLook = css`
  .stage {
    position: relative;
    flex: 1;
    min-height: 0;
    overflow: auto;
    font-size: var(--large);
    line-height: 1.3;
    scrollbar-width: thin;
    scrollbar-color: var(--rule) transparent;
  }
  .stage > .sentence,
  .results {
    padding: 1.2rem 1.4rem;
  }
  .results {
    font-size: 1rem;
  }
  /* The rod itself: wood from top to bottom, marks cut into its right edge. */
  .rod {
    list-style: none;
    margin: 0;
    padding: 0.8rem 1.4rem 2rem calc(2.1rem + var(--stick));
    min-height: 100%;
    background: linear-gradient(
        to right,
        var(--wood-edge) 1px,
        var(--wood) 1px calc(100% - 1px),
        var(--wood-edge) calc(100% - 1px)
      )
      0.9rem 0 / var(--stick) 100% no-repeat;
  }
  .mark,
  .now {
    position: relative;
  }
  .mark button {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.8em;
    align-items: baseline;
    min-height: 1.9rem;
    font-size: 0.72em;
    color: var(--pencil);
  }
  .mark button:hover .name {
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
  .mark .value {
    font-weight: 650;
    color: var(--graphite);
  }
  .mark::before,
  .comes::before {
    content: '';
    position: absolute;
    top: 0.95rem;
    left: calc(-1.2rem - var(--stick));
    width: calc(0.3rem + var(--stick) * 0.62);
    margin-left: calc(var(--stick) * 0.38);
    border-top: 2px solid var(--wood-mark);
  }
  .to-come {
    font-size: 0.72em;
    min-height: 1.9rem;
    padding-top: 0.2rem;
    color: var(--pencil);
  }
  .to-come::before {
    border-top-style: dotted;
  }
  article {
    padding: 0.5rem 0 0.9rem;
    outline: 0;
  }
  .now {
    margin: 0.35rem 0 0.5rem;
    border-top: 1px solid var(--rule);
    border-bottom: 1px solid var(--rule);
  }
  article:focus-visible {
    outline: 0;
  }
  /* The crow's-foot: where one stands on the rod. */
  .now::before {
    content: '';
    position: absolute;
    top: 1.15em;
    left: calc(-1.1rem - var(--stick) * 0.35);
    width: calc(var(--stick) * 0.45);
    height: calc(var(--stick) * 0.45);
    border: solid var(--keel);
    border-width: 0 0 2.5px 2.5px;
    transform: rotate(45deg);
  }
  h3 {
    margin: 0 0 0.15em;
    font-size: 1.15em;
    line-height: 1.2;
  }
  h3:focus {
    outline: 0;
  }
  h4 {
    margin: 0.8em 0 0.1em;
    font-size: 0.85em;
  }
  .sides {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.5rem 2.5rem;
  }
  .told {
    display: grid;
    gap: 0.6rem;
    align-content: start;
    min-width: 0;
  }
  .sentence {
    max-width: 46em;
    color: var(--pencil);
  }
  .sentence b {
    color: var(--graphite);
    font-weight: 600;
  }
  ul,
  .lines {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .put-in,
  .went {
    display: grid;
    grid-template-columns: minmax(5.5em, max-content) max-content minmax(0, 1fr) auto;
    gap: 0 0.8em;
    font-size: 0.85em;
  }
  .put-in li,
  .went li {
    display: grid;
    grid-column: 1 / -1;
    grid-template-columns: subgrid;
    align-items: baseline;
    padding: 0.14em 0;
    border-bottom: 1px solid var(--hair);
  }
  .put-in .value,
  .went .value {
    font-weight: 650;
  }
  .where {
    font-size: max(0.8em, var(--small));
    color: var(--pencil);
    overflow-wrap: anywhere;
  }
  .where.caution {
    grid-column: 1 / -1;
  }
  .caution b {
    color: var(--keel);
  }
  .known {
    font-size: max(0.7em, var(--small));
  }
  .more-in summary {
    cursor: pointer;
    font-size: 0.8em;
    color: var(--pencil);
  }
  .lines {
    display: grid;
    gap: 0.45rem;
  }
  .words {
    font-size: max(0.75em, var(--small));
    color: var(--pencil);
  }
  .numbers {
    font-size: 1.3em;
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  s {
    color: var(--pencil);
    text-decoration-thickness: 0.08em;
  }
  .beside {
    max-width: 52em;
    font-size: max(0.7em, var(--small));
    color: var(--pencil);
  }
  .beside.caution {
    padding-left: 0.7em;
    border-left: 3px solid var(--keel);
    color: var(--graphite);
  }
  .beside.caution.otherwise {
    border-left-color: var(--rule);
    color: var(--pencil);
  }
  .otherwise b {
    color: inherit;
  }
  .came {
    font-weight: 650;
  }
  /* What it comes to is a mark on the rod. */
  .comes {
    position: relative;
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.6em;
    align-items: baseline;
    margin-top: 0.5em;
  }
  .comes::before {
    top: 1.15em;
    border-top: 3px solid var(--keel);
  }
  .comes .value {
    font-size: 1.6em;
    font-weight: 750;
    letter-spacing: -0.01em;
  }
  .comes .name {
    color: var(--pencil);
  }
  .drawing {
    --small: max(0.8125rem, 0.62em);
    margin: 0;
    padding: 0;
    max-width: none;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    margin-top: 1rem;
  }
  .stage .acts .act {
    min-height: 2.5rem;
    padding-inline: 1rem;
    font-size: 1rem;
  }
  @media (min-width: 1100px) {
    .sides:has(> .drawing) {
      grid-template-columns: minmax(0, 1fr) minmax(22rem, 36%);
    }
  }
  @media (max-width: 760px) {
    .rod {
      padding: 0.4rem 0.75rem 1.5rem calc(1.6rem + var(--stick));
      background-position-x: 0.4rem;
    }
    .to-come {
      display: none;
    }
    .put-in,
    .went {
      grid-template-columns: max-content minmax(0, 1fr) auto;
    }
    .where {
      grid-column: 1 / -1;
    }
    .put-in .known {
      grid-area: 1 / 3;
    }
  }
  @media (forced-colors: active) {
    .mark::before,
    .comes::before {
      border-color: CanvasText;
    }
  }
`;
