// As much of JSON Schema as src/figure.schema.json uses: what in a value is not as the schema says.
// A word of the schema that isn't known here throws, so that none is passed over.

interface Schema {
  readonly [word: string]: unknown;
}

const READ_ELSEWHERE = [
  '$schema',
  'title',
  'description',
  '$defs',
  'required',
  'additionalProperties',
];

/** Each fault with the path to it; none when the value is as it should be. */
export function schemaFaults(
  root: Schema,
  value: unknown,
  schema: Schema = root,
  at = '$',
): readonly string[] {
  const faults: string[] = [];
  for (const [word, wish] of Object.entries(schema)) {
    switch (word) {
      case 'type': {
        const types = Array.isArray(wish) ? wish : [wish];
        if (!types.some((type) => isOf(type, value)))
          faults.push(`${at} is no ${types.join(' or ')}`);
        break;
      }
      case 'enum':
        if (!(wish as unknown[]).includes(value))
          faults.push(`${at} is none of ${JSON.stringify(wish)}`);
        break;
      case 'pattern':
        if (typeof value === 'string' && !new RegExp(wish as string).test(value)) {
          faults.push(`${at} is not like ${wish as string}: ${value}`);
        }
        break;
      case 'minimum':
        if (typeof value === 'number' && value < (wish as number))
          faults.push(`${at} is under ${wish as number}`);
        break;
      case 'items':
        if (Array.isArray(value)) {
          value.forEach((item, i) =>
            faults.push(...schemaFaults(root, item, wish as Schema, `${at}[${i}]`)),
          );
        }
        break;
      case 'properties':
        faults.push(...objectFaults(root, value, schema, at));
        break;
      case 'anyOf':
        if (!(wish as Schema[]).some((one) => schemaFaults(root, value, one, at).length === 0)) {
          faults.push(`${at} is none of what it may be`);
        }
        break;
      case '$ref': {
        const name = (wish as string).replace('#/$defs/', '');
        faults.push(
          ...schemaFaults(root, value, (root['$defs'] as Record<string, Schema>)[name], at),
        );
        break;
      }
      default:
        if (!READ_ELSEWHERE.includes(word))
          throw new Error(`the schema says ${word}, which is not read here`);
    }
  }
  return faults;
}

function objectFaults(root: Schema, value: unknown, schema: Schema, at: string): readonly string[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  const properties = schema['properties'] as Record<string, Schema>;
  const faults: string[] = [];
  for (const name of schema['required'] as string[]) {
    if (!Object.hasOwn(value, name)) faults.push(`${at} has no ${name}`);
  }
  for (const [name, inner] of Object.entries(value)) {
    const wish = Object.hasOwn(properties, name) ? properties[name] : undefined;
    if (wish) faults.push(...schemaFaults(root, inner, wish, `${at}.${name}`));
    else if (schema['additionalProperties'] === false)
      faults.push(`${at} has ${name}, which is not in the schema`);
  }
  return faults;
}

function isOf(type: unknown, value: unknown): boolean {
  switch (type) {
    case 'null':
      return value === null;
    case 'array':
      return Array.isArray(value);
    case 'object':
      return typeof value === 'object' && value !== null && !Array.isArray(value);
    case 'integer':
      return Number.isInteger(value);
    case 'number':
    case 'string':
    case 'boolean':
      return typeof value === type;
    default:
      throw new Error(`the schema says type ${String(type)}, which is not read here`);
  }
}
