// How showing how looks around the steps: as large as the screen, the line of what is shown above, the bar that goes on below.
import { css } from 'lit';

export const showHowLook = css`
  dialog {
    width: 100vw;
    max-width: none;
    height: 100dvh;
    max-height: none;
    margin: 0;
    padding: 0;
    border: 0;
    background: var(--paper);
    color: var(--graphite);
    overflow: hidden;
    --large: clamp(1.05rem, 0.7rem + 1.15vw, 2rem);
    --stick: clamp(0.9rem, 1.6vw, 1.6rem);
  }
  dialog[open] {
    display: flex;
    flex-direction: column;
  }
  dialog::backdrop {
    background: var(--paper);
  }
  p {
    margin: 0;
  }
  .top {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.2rem 1.2rem;
    padding: 0.7rem 1.4rem 0.5rem;
    border-bottom: 1.5px solid var(--graphite);
  }
  h2 {
    flex: 1;
    margin: 0;
    font-size: 1.1rem;
  }
  .of {
    margin-left: 0.7rem;
    font-weight: 400;
    font-size: var(--small);
    color: var(--pencil);
  }
  .more {
    display: none;
  }
  .tools {
    flex: 1 0 100%;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 1.2rem;
    font-size: var(--small);
    color: var(--pencil);
  }
  .tools select,
  .tools input:not([type]) {
    min-height: 1.75rem;
    padding: 0 0.3rem;
    color: var(--graphite);
    background: var(--lifted);
    border: 1px solid var(--faint);
    border-radius: 2px;
  }
  .tools select {
    max-width: 16rem;
  }
  .tools .fresh {
    display: flex;
    gap: 0.4rem;
    align-items: center;
  }
  .tools .fresh input {
    width: 5.2rem;
  }
  .ask {
    display: inline-flex;
    gap: 0.35rem;
    align-items: center;
    min-height: 1.75rem;
    color: var(--graphite);
    font-weight: 600;
  }
  .ask input {
    width: 1.05rem;
    height: 1.05rem;
    accent-color: var(--graphite);
  }
  .said {
    color: var(--graphite);
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.4rem 0.9rem;
    padding: 0.5rem 1.4rem;
    border-top: 1.5px solid var(--graphite);
    background: var(--bench);
  }
  .bar .act {
    min-height: 2.5rem;
    min-width: 5.5rem;
    justify-content: center;
    font-size: 1rem;
  }
  .bar .on {
    min-width: 8rem;
  }
  .progress {
    min-width: 8.5rem;
    font-weight: 600;
  }
  .to-copy {
    display: grid;
    gap: 0.4rem;
    justify-items: start;
    padding: 0.6rem 1.4rem;
    border-top: 1px solid var(--rule);
  }
  .to-copy label,
  .to-copy textarea {
    display: block;
    width: 100%;
  }
  .paper {
    display: none;
  }
  @media (max-width: 760px) {
    .top {
      padding: 0.5rem 0.75rem 0.4rem;
    }
    .of {
      display: none;
    }
    .more {
      display: inline-block;
    }
    .tools:not([data-spread]) {
      display: none;
    }
    .bar {
      padding: 0.4rem 0.75rem;
      gap: 0.3rem 0.7rem;
    }
    .bar .on {
      flex: 1;
    }
    .ends {
      display: none;
    }
  }
`;
