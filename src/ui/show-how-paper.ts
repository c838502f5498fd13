// The sheet on paper: nothing of the screen, the whole working instead.
import { css } from 'lit';

export const showHowPaper = css`
  @media print {
    dialog {
      position: static;
      width: auto;
      height: auto;
      overflow: visible;
    }
    dialog[open] {
      display: block;
    }
    .top,
    .stage,
    .bar,
    .to-copy,
    .heard {
      display: none;
    }
    .paper {
      display: block;
      font-size: 10pt;
      line-height: 1.35;
    }
    .proof .place,
    .proof .when {
      color: var(--pencil);
    }
    .proof h3 {
      margin: 0.1em 0 0.15em;
      font-size: 14pt;
    }
    .proof .when {
      padding-bottom: 0.4em;
      margin-bottom: 0.6em;
      border-bottom: 1.5px solid var(--graphite);
    }
    .proof .told {
      display: block;
      padding: 0.2em 0 0.2em 0.6em;
      border-left: 1px solid var(--rule);
      break-inside: avoid;
    }
    .proof .words {
      font-size: inherit;
    }
    .proof .numbers {
      font-size: 11pt;
    }
    .proof .beside {
      max-width: none;
      font-size: 9pt;
    }
    .proof .into {
      margin-top: 0.6em;
      padding-top: 0.4em;
      border-top: 1px solid var(--rule);
      color: var(--pencil);
    }
  }
`;
