// Names that were typed short: `slab vol`, `matls`, `thk`, `slab L`. They are offered, never taken.

/** The names that may have been shortened so, in their order. */
export function shortFor(typed: string, names: Iterable<string>): string[] {
  const words = wordsOf(typed);
  if (words.length === 0) return [];
  return [...new Set(names)].filter((name) => {
    const whole = wordsOf(name);
    if (whole.length !== words.length) return false;
    const alike = words.filter((word, i) => word === whole[i]).length;
    if (alike === words.length) return false;
    return words.every((word, i) => isShortFor(word, whole[i] ?? '', alike > 0 ? 1 : 3));
  });
}

/** Is it the word itself, how it begins, or its first letter with others of it in order? `least`: how many letters tell enough. */
function isShortFor(word: string, whole: string, least: number): boolean {
  if (word === whole) return true;
  if (word.length >= whole.length || !whole.startsWith(word.charAt(0))) return false;
  if (word.length >= least && whole.startsWith(word)) return true;
  if (word.length < Math.max(2, least)) return false;
  return hasInOrder(whole, word) && !/[aeiou]{2}/.test(word.slice(1));
}

function hasInOrder(whole: string, letters: string): boolean {
  let at = 0;
  for (const letter of letters) {
    at = whole.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[\s.]+/)
    .filter((word) => word !== '');
}
