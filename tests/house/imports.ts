// What a source file asks for: every module it names and every global it reaches for, from its syntax tree.
import { parseSync } from 'vite';

export interface Import {
  readonly from: string;
  /** The names asked for; `*` for everything, `default` for the default; empty for a bare import. */
  readonly names: readonly string[];
  /** Only types: nothing of it is left in the running program. */
  readonly typesOnly: boolean;
}

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

/** Every `import`, `export … from`, `import(…)` and type import of a file. Throws when the file can't be read. */
export function importsOf(file: string, source: string): readonly Import[] {
  const parsed = parsing(file, source);
  const found: Import[] = [];
  for (const { moduleRequest, entries } of parsed.module.staticImports) {
    found.push({
      from: moduleRequest.value,
      names: entries.map(({ importName }) => nameOf(importName)),
      typesOnly: entries.length > 0 && entries.every(({ isType }) => isType),
    });
  }
  for (const { entries } of parsed.module.staticExports) {
    for (const { moduleRequest, importName, isType } of entries) {
      if (!moduleRequest) continue;
      found.push({
        from: moduleRequest.value,
        names: [nameOf(importName)],
        typesOnly: isType,
      });
    }
  }
  walk(parsed.program as unknown as Node, (node) => {
    if (node.type !== 'ImportExpression' && node.type !== 'TSImportType') return;
    const text = (node['source'] as Node)['value'];
    found.push({
      from: typeof text === 'string' ? text : '(worked out while running)',
      names: ['*'],
      typesOnly: node.type === 'TSImportType',
    });
  });
  return found;
}

/** Names that are used as values and bound nowhere in the file, members of `Math` and `Date` as `Math.random`. */
export function globalsOf(file: string, source: string): ReadonlySet<string> {
  const program = parsing(file, source).program as unknown as Node;
  const bound = new Set<string>();
  const used = new Set<string>();
  walk(program, (node) => {
    for (const part of bindings(node)) collectNames(part, bound);
  });
  walk(program, (node, parent, key) => {
    if (node.type === 'Identifier' && isUse(parent, key)) used.add(node['name'] as string);
    if (node.type === 'MemberExpression' && !node['computed']) {
      const object = node['object'] as Node;
      if (object.type === 'Identifier') {
        used.add(`${object['name'] as string}.${(node['property'] as Node)['name'] as string}`);
      }
    }
  });
  return new Set([...used].filter((name) => !bound.has(name.split('.')[0] ?? name)));
}

function parsing(file: string, source: string) {
  const parsed = parseSync(file, source);
  const [first] = parsed.errors;
  if (first) throw new Error(`${file} can't be read: ${first.message}`);
  return parsed;
}

function nameOf(name: { readonly kind: string; readonly name?: string | null }): string {
  switch (name.kind) {
    case 'Name':
      return name.name ?? '*';
    case 'Default':
      return 'default';
    default:
      return '*';
  }
}

type Visit = (node: Node, parent: Node | null, key: string) => void;

function walk(node: Node, visit: Visit, parent: Node | null = null, key = ''): void {
  visit(node, parent, key);
  for (const [name, value] of Object.entries(node)) {
    for (const child of Array.isArray(value) ? (value as unknown[]) : [value]) {
      if (isNode(child)) walk(child, visit, node, name);
    }
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';
}

/** The patterns in which a node binds names. */
function bindings(node: Node): readonly unknown[] {
  switch (node.type) {
    case 'VariableDeclarator':
      return [node['id']];
    case 'FunctionDeclaration':
    case 'FunctionExpression':
    case 'ArrowFunctionExpression':
      return [node['id'], ...(node['params'] as unknown[])];
    case 'ClassDeclaration':
    case 'ClassExpression':
      return [node['id']];
    case 'CatchClause':
      return [node['param']];
    case 'ImportSpecifier':
    case 'ImportDefaultSpecifier':
    case 'ImportNamespaceSpecifier':
      return [node['local']];
    default:
      return [];
  }
}

function collectNames(pattern: unknown, into: Set<string>): void {
  if (!isNode(pattern)) return;
  if (pattern.type === 'Identifier') into.add(pattern['name'] as string);
  const inside = [pattern['left'], pattern['argument'], pattern['value'], pattern['parameter']];
  const lists = [pattern['elements'], pattern['properties']];
  for (const part of [...inside, ...lists.flatMap((list) => (Array.isArray(list) ? list : []))]) {
    collectNames(part, into);
  }
}

/** An identifier that stands for a value; not a key, not the name after a dot, not a type. */
function isUse(parent: Node | null, key: string): boolean {
  if (!parent) return true;
  if (key === 'property' && parent.type === 'MemberExpression') return parent['computed'] === true;
  if (key === 'key') return parent['computed'] === true;
  if (['LabeledStatement', 'BreakStatement', 'ContinueStatement'].includes(parent.type))
    return false;
  if (/^(Import|Export).*Specifier$/.test(parent.type)) return key === 'local';
  if (parent.type === 'MetaProperty') return false;
  if (parent.type.startsWith('TS'))
    return key === 'expression' && !/Heritage|Implements/.test(parent.type);
  return true;
}
