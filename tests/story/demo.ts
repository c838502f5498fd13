// The demo worked without a browser: what a story expects to see on the page.
import fs from 'node:fs';
import { Estimate } from '../../src/notebook/estimate.ts';
import { money } from '../../src/ui/money-words.ts';
import { allCells, cellOf } from '../../src/ui/reading-order.ts';

const DEMO = fs.readFileSync(new URL('../../templates/kestrel-court.md', import.meta.url), 'utf8');

/** What the demo comes to with these formulas in place of its own. */
export class Demo {
  readonly #estimate = new Estimate(DEMO);

  constructor(changes: Readonly<Record<string, string>> = {}) {
    for (const [name, formula] of Object.entries(changes)) {
      const done = this.#estimate.setFormula(this.#id(name), formula);
      if (!('change' in done)) throw new Error(`${name}: ${done.message}`);
    }
  }

  get text(): string {
    return this.#estimate.notebook.text;
  }

  get price(): string {
    return money(this.#estimate.costs().total.price, this.#estimate.notebook.settings.currency);
  }

  get direct(): string {
    return money(this.#estimate.costs().total.direct, this.#estimate.notebook.settings.currency);
  }

  /** The names of the parts in their order. */
  get parts(): readonly string[] {
    return this.#estimate.notebook.parts.flatMap(({ name }) => (name ? [name] : []));
  }

  shown(name: string): string {
    return this.#estimate.shown(this.#id(name))?.text ?? '';
  }

  /** Where a given comes from, as its remark says. */
  sourceOf(name: string): string {
    const cell = cellOf(this.#estimate.notebook, this.#id(name));
    return cell?.remarks.find(({ kind }) => kind === 'from')?.text ?? '';
  }

  #id(name: string): number {
    const cell = allCells(this.#estimate.notebook).find((one) => one.name === name);
    if (!cell) throw new Error(`the demo has no cell called ${name}`);
    return cell.id;
  }
}
