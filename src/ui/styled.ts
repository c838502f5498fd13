// Measures that are only known while running, set on an element through its style object: a style
// attribute would be refused by a policy that allows no inline styles.
import { noChange } from 'lit';
import { Directive, type ElementPart, directive } from 'lit/directive.js';

class Styled extends Directive {
  override render(_styles: Readonly<Record<string, string>>): typeof noChange {
    return noChange;
  }

  override update(
    part: ElementPart,
    [styles]: [Readonly<Record<string, string>>],
  ): typeof noChange {
    const { style } = part.element as HTMLElement;
    for (const [name, value] of Object.entries(styles)) {
      if (style.getPropertyValue(name) !== value) style.setProperty(name, value);
    }
    return noChange;
  }
}

/** On the element itself: `<div ${styled({ height: '12px' })}>`. */
export const styled = directive(Styled);
