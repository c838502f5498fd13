// The canonical sentence: a tree said back in tidy words, with brackets wherever a careful reader might doubt.
// Read again, the sentence gives the same tree.
import type { Binary, Formula } from './tree.ts';
import type { Nouns } from '../quantity/nouns.ts';
import {
  AND,
  CLAUSE,
  CONDITION,
  isPhrase,
  isSlot,
  isSum,
  NOT,
  OR,
  SLOT,
  SUM,
  TERM,
  tightness,
  VALUE,
} from './tightness.ts';
import { COLUMN, LOOK_UP, OPERATOR, RELATION, WAY } from './sentence-words.ts';
import { isWrittenLength } from './amounts-held.ts';
import { LENGTH } from '../quantity/dimension.ts';
import type { Form, Term } from '../quantity/form.ts';
import { OPENINGS } from './phrases.ts';

/** The sentence. `nouns` gives plurals. */
export function sentence(tree: Formula, nouns: Nouns): string {
  return new Speaker(nouns).say(tree, CONDITION);
}

class Speaker {
  readonly #nouns: Nouns;

  constructor(nouns: Nouns) {
    this.#nouns = nouns;
  }

  say(tree: Formula, place: number): string {
    const words = tree.kind === 'binary' ? this.#chain(tree) : this.#plain(tree);
    return tightness(tree) < place ? `(${words})` : words;
  }

  /** A chain of operators grouped to the left, without a call for each. */
  #chain(tree: Binary): string {
    const chain: Binary[] = [];
    let left: Formula = tree;
    while (left.kind === 'binary') {
      const outer = chain.at(-1);
      if (outer && this.#bracketed(outer, left)) break;
      chain.push(left);
      left = left.left;
    }
    const pieces: string[] = [this.#operand(left)];
    for (const node of chain.toReversed()) {
      pieces.push(OPERATOR[node.op], this.#rightOperand(node));
    }
    return pieces.join(' ');
  }

  #operand(left: Formula): string {
    return this.#shut(left, left.kind === 'binary' || isPhrase(left) ? SLOT : VALUE);
  }

  /** A size stands in brackets wherever something beside it could belong to it. */
  #shut(tree: Formula, place: number): string {
    return tree.kind === 'size' ? `(${tree.text})` : this.say(tree, place);
  }

  /** Products and sums don't mix without brackets; neither do `at` and `over` with what comes before. */
  #bracketed(outer: Binary, left: Binary): boolean {
    const sum = isSum(outer);
    if (sum !== isSum(left)) return true;
    if (sum) return false;
    return (outer.op === 'at' || outer.op === 'over') !== (left.op === 'at' || left.op === 'over')
      ? left.op === 'at' || left.op === 'over'
      : false;
  }

  #rightOperand(node: Binary): string {
    // What follows a size could be its length: `2x8 by 9 ft`.
    return this.#shut(node.right, isPhrase(node.right) ? SLOT : VALUE);
  }

  #plain(tree: Exclude<Formula, Binary>): string {
    switch (tree.kind) {
      case 'amount':
        return tree.say;
      case 'words':
        return tree.chosen ? tree.text : `"${tree.text}"`;
      case 'size':
        return tree.text;
      case 'yes-no':
        return tree.value ? 'yes' : 'no';
      case 'name':
        return tree.say;
      case 'negative':
        // What follows the size could be its length here too.
        return `−${this.#shut(tree.of, tree.of.kind === 'power' ? VALUE : SLOT)}`;
      case 'comparison':
        return `${this.say(tree.left, SUM)} ${RELATION[tree.relation]} ${this.say(tree.right, SUM)}`;
      case 'between':
        return `${this.say(tree.of, SUM)} is between ${this.say(tree.low, TERM)} and ${this.say(tree.high, TERM)}`;
      case 'and':
        return `${this.say(tree.left, AND)} and ${this.say(tree.right, NOT)}`;
      case 'or':
        return `${this.say(tree.left, OR)} or ${this.say(tree.right, AND)}`;
      case 'not':
        return `not ${this.say(tree.of, tree.of.kind === 'not' ? NOT : SLOT)}`;
      case 'condition':
        return this.#condition(tree);
      case 'in-units':
        return `${this.#closed(tree.of)} in ${this.#form(tree.form)}`;
      case 'in-packs':
        return `${this.#closed(tree.of)} in ${this.#stock(tree.holdsEach, tree.noun)}`;
      case 'as-noun':
        return `${this.#closed(tree.of)} as ${this.#nouns.many(tree.noun)}`;
      case 'rounded':
        return `${this.#closed(tree.of)} rounded${WAY[tree.way]}${this.#step(tree)}`;
      case 'marked-up':
        return `${this.#closed(tree.of)} marked up ${tree.share.kind === 'amount' ? '' : 'by '}${this.#shareSlot(tree.share)}`;
      case 'for-shares':
        return `${this.#closed(tree.of)} for ${this.#shares(tree.shares)}`;
      case 'limited':
        return `${this.#closed(tree.of)} not ${tree.side === 'not-less' ? 'less' : 'more'} than ${this.say(tree.limit, SLOT)}`;
      case 'pick':
        return this.#pick(tree);
      case 'list':
        return `${tree.what} of ${this.#items(tree.items)}`;
      case 'part-of':
        return this.#partOf(tree);
      case 'what-share':
        return `what share ${this.say(tree.of, SLOT)} is of ${this.say(tree.whole, SLOT)}`;
      case 'power':
        return `${this.#shut(tree.of, SLOT)} ${tree.power === 2 ? 'squared' : 'cubed'}`;
      case 'square-root':
        return `square root of ${this.say(tree.of, VALUE)}`;
      case 'pi':
        return 'pi';
      case 'diagonal':
        return `diagonal of ${this.say(tree.a, SLOT)} and ${this.say(tree.b, SLOT)}`;
      case 'circle': {
        const opening = tree.what === 'area' ? 'circle area for' : 'circumference for';
        const size = this.say(tree.size, SLOT);
        return `${opening} ${size}${size.endsWith(tree.across) ? '' : ` ${tree.across}`}`;
      }
      case 'triangle': {
        const [a, b, c] = tree.sides.map((s) => this.say(s, SLOT));
        return `triangle area for sides ${a}, ${b} and ${c}`;
      }
      case 'pieces':
        return `${this.say(tree.count, SLOT)} of ${this.say(tree.length, SLOT)} from ${this.#stock(tree.stock, tree.noun)}`;
      case 'spaced': {
        const along = tree.ends === 'loop' ? 'around' : 'along';
        const ends =
          tree.ends === 'one' ? ', one end' : tree.ends === 'neither' ? ', neither end' : '';
        return `${this.#nouns.many(tree.noun)} every ${this.say(tree.spacing, SLOT)} ${along} ${this.say(tree.along, SLOT)}${ends}`;
      }
      case 'fewest': {
        const gap = tree.gapRelation === 'under' ? 'under' : 'at most';
        return `fewest ${this.#nouns.many(tree.noun)} of ${this.say(tree.width, SLOT)} across ${this.say(tree.across, SLOT)} with gaps ${gap} ${this.say(tree.gap, SLOT)}`;
      }
      case 'even-gap':
        return `even gap for ${this.say(tree.count, SLOT)} of ${this.say(tree.width, SLOT)} across ${this.say(tree.across, SLOT)}`;
      case 'recap':
        return tree.say;
      case 'column':
        return `${COLUMN[tree.what]} ${tree.columnSay} in ${tree.tableSay}`;
      case 'row-count':
        return `how many ${tree.tableSay}`;
      case 'look-up':
        return this.#lookUp(tree);
      case 'sized':
        return this.#sized(tree);
      case 'range':
        return this.#range(tree);
      case 'bracket':
        return `(${this.say(tree.of, CONDITION)})`;
      case 'hole':
        return '…';
    }
  }

  /** What a clause works on: a sum or less; a comma shows that it is closed where it has operators in it. */
  #closed(of: Formula): string {
    const words = this.say(of, CLAUSE);
    // A bare number is closed too: `12, in cubic yards` is not twelve inches.
    const open = tightness(of) <= TERM || /[\d½⅓⅔¼¾⅛⅜⅝⅞]$/.test(words);
    return open ? `${words},` : words;
  }

  #partOf({ share, of }: Extract<Formula, { kind: 'part-of' }>): string {
    // So much of a size would be that much lumber.
    return `${this.say(share, SLOT)} ${opensWithOf(share) ? 'on' : 'of'} ${this.#shut(of, VALUE)}`;
  }

  #condition(tree: Extract<Formula, { kind: 'condition' }>): string {
    const branches = tree.branches.map(
      (b) => `${this.say(b.value, TERM)} where ${this.say(b.when, OR)}`,
    );
    return `${branches.join(', ')}, otherwise ${this.say(tree.otherwise, VALUE)}`;
  }

  #sized({ count, length, size }: Extract<Formula, { kind: 'sized' }>): string {
    const of = `${this.say(count ?? length ?? size, SLOT)} of ${this.say(size, SLOT)}`;
    if (!count || !length) return of;
    const words = this.say(length, SLOT);
    // In brackets anything may stand; without them only a length is the length of each.
    const isLength = length.kind !== 'amount' || isWrittenLength(length);
    return `${of} by ${isLength ? words : `(${words})`}`;
  }

  #lookUp(tree: Extract<Formula, { kind: 'look-up' }>): string {
    const [only] = tree.conditions;
    if (tree.asked !== undefined && only) {
      return `${tree.asked} of ${this.say(only.value, SLOT)}`;
    }
    const conditions = tree.conditions.map(
      (c) => `${c.columnSay} ${LOOK_UP[c.relation]}${this.say(c.value, SLOT)}`,
    );
    return `read ${tree.columnSay} off ${tree.tableSay} for ${conditions.join(', ')}`;
  }

  #range(tree: Extract<Formula, { kind: 'range' }>): string {
    const first = tree.first ? `${this.say(tree.first, VALUE)}, ` : '';
    return `${first}${this.say(tree.best, VALUE)} at best, ${this.say(tree.worst, VALUE)} at worst`;
  }

  #pick(tree: Extract<Formula, { kind: 'pick' }>): string {
    return `the ${tree.which === 'greater' ? 'greater' : 'lesser'} of ${this.#items(tree.items)}`;
  }

  #items(items: readonly Formula[]): string {
    const said = items.map((item) =>
      item.kind === 'binary' && item.op === 'at' && isSlot(item.left) && isSlot(item.right)
        ? this.say(item, TERM)
        : this.say(item, SLOT),
    );
    return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
  }

  #shares(shares: readonly { share: Formula; label: string | null }[]): string {
    const said = shares.map(({ share, label }) => {
      const words = this.#shareSlot(share);
      if (label === 'margin' && share.kind !== 'amount') return `a margin of ${words}`;
      const article = label === 'margin' && share.kind === 'amount' ? `a ${words}` : words;
      return label && !words.endsWith(label) ? `${article} ${label}` : article;
    });
    return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
  }

  #shareSlot(share: Formula): string {
    return this.say(share, SLOT);
  }

  #step(tree: Extract<Formula, { kind: 'rounded' }>): string {
    if (!tree.step) return '';
    return ` to the ${tree.way === 'nearest' ? 'nearest' : 'next'} ${this.say(tree.step, SLOT)}`;
  }

  #stock(each: Formula, noun: string): string {
    const many = this.#nouns.many(noun);
    const { measure } = each.kind === 'amount' ? each.holds : { measure: null };
    const isLength =
      measure?.kind === 'amount' && measure.dimension === LENGTH && each.kind === 'amount';
    return isLength ? `${each.say} ${many}` : `${many} of ${this.say(each, SLOT)}`;
  }

  #form(form: Form): string {
    const over = form.over.map((t) => this.#term(t, true)).join(' ');
    return (
      over +
      form.under
        .map((t) => ` per ${t.count ? `${t.count} ` : ''}${this.#term(t, t.count !== null)}`)
        .join('')
    );
  }

  #term(term: Term, many: boolean): string {
    if (term.kind === 'noun') return many ? this.#nouns.many(term.noun) : term.noun;
    return many ? term.unit.many : term.unit.one;
  }
}

/** Does its name open a phrase where `of` comes after it? A cell may be called Total. */
function opensWithOf(share: Formula): boolean {
  if (share.kind !== 'name') return false;
  const words = `${share.say.toLowerCase().replace(/^(?:the|a|an) /, '')} of`;
  return OPENINGS.some((opening) => opening.words.join(' ') === words);
}
