// How a picture looks: the lines and hatches of a builder's drawing in graphite, keel for what does not agree.
import { css } from 'lit';

export const pictureLook = css`
  :host {
    display: block;
    padding: 0.2rem 0.5rem 0.9rem;
    margin-left: calc(var(--value) + 0.9rem);
    max-width: 40rem;
  }
  figure {
    margin: 0.35rem 0 0;
  }
  figure.last {
    opacity: 0.45;
  }
  svg.sheet {
    display: block;
    width: 100%;
    height: auto;
  }
  figcaption {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 1.1rem;
    margin-top: 0.2rem;
    font-size: var(--small);
    color: var(--pencil);
    align-items: center;
  }
  figcaption b {
    color: var(--graphite);
    font-weight: 600;
  }
  figcaption b::first-letter {
    text-transform: uppercase;
  }
  ul {
    display: contents;
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    display: inline-flex;
    gap: 0.4rem;
    align-items: center;
  }
  li svg {
    flex: none;
  }
  p {
    margin: 0.25rem 0 0;
    max-width: 62ch;
    font-size: var(--small);
  }
  p.wrong {
    color: var(--keel);
  }
  p.waits {
    color: var(--pencil);
  }
  :where(path, circle, line) {
    fill: none;
  }
  path,
  circle,
  line {
    vector-effect: non-scaling-stroke;
    stroke-linejoin: round;
  }
  .line-none {
    stroke: none;
  }
  .line-cut {
    stroke: var(--graphite);
    stroke-width: 1.6;
  }
  .line-outline {
    stroke: var(--graphite);
    stroke-width: 0.9;
  }
  .line-light {
    stroke: var(--pencil);
    stroke-width: 0.7;
  }
  .line-hidden {
    stroke: var(--graphite);
    stroke-width: 0.9;
    stroke-dasharray: 5 3;
  }
  .line-centre {
    stroke: var(--pencil);
    stroke-width: 0.8;
    stroke-dasharray: 9 3 2 3;
  }
  .line-strong {
    stroke: var(--graphite);
    stroke-width: 2.6;
  }
  .line-wrong {
    stroke: var(--keel);
    stroke-width: 1.8;
  }
  .fill-paper {
    fill: var(--paper);
  }
  .fill-solid {
    fill: var(--graphite);
  }
  .fill-wrong {
    fill: var(--keel-wash);
  }
  .ground,
  .behind {
    fill: var(--paper);
    stroke: none;
  }
  .hatch {
    stroke: var(--pencil);
    stroke-width: 0.65;
    stroke-linecap: round;
  }
  .dimension,
  .extension,
  .leader {
    stroke: var(--pencil);
    stroke-width: 0.7;
  }
  .tick {
    stroke: var(--graphite);
    stroke-width: 1.3;
  }
  .bar {
    stroke: var(--pencil);
    stroke-width: 1;
  }
  .leader.wrong {
    stroke: var(--keel);
  }
  text {
    font: 12px var(--face);
    font-variant-numeric: tabular-nums lining-nums;
    fill: var(--graphite);
  }
  .ring {
    fill: none;
    stroke: var(--keel);
    stroke-width: 1.8;
  }
  text.wrong {
    fill: var(--keel);
    font-weight: 600;
  }
  @media (max-width: 760px) {
    :host {
      margin-left: 0;
      padding-inline: 0.25rem;
    }
  }
  @media (forced-colors: active) {
    text {
      fill: CanvasText;
    }
    .line-cut,
    .line-outline,
    .line-light,
    .line-hidden,
    .line-centre,
    .line-strong,
    .line-wrong,
    .tick,
    .dimension,
    .extension,
    .bar {
      stroke: CanvasText;
    }
  }
  @media print {
    :host {
      margin-left: 0;
      break-inside: avoid;
      max-width: 150mm;
    }
    figure.last {
      opacity: 1;
    }
  }
`;
