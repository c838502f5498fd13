// The mark of what is watched: two short strokes across an edge, as a carpenter marks what two pieces have in common.
import { css, html, type TemplateResult } from 'lit';

export const witnessLook = css`
  .witness {
    display: inline-block;
    width: 0.62em;
    height: 0.34em;
    margin: 0 0.4em 0.12em;
    border: solid currentcolor;
    border-width: 1.5px 0;
    transform: skewY(-18deg);
  }
  @media print {
    .witness {
      display: none;
    }
  }
`;

export function witness(): TemplateResult {
  return html`<span class="witness" role="img" aria-label="watched" title="watched"></span>`;
}
