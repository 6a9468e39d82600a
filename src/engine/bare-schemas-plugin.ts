/**
 * A step of the build of the page: each field of a schema says what it means, for the published JSON Schema. The page checks by
 * the schemas and shows none of it, so it is left out there.
 */
import { type Plugin, parseAst } from 'vite';

/** Functions of sim/files/schema-parts.ts: a schema, and what its field means. */
const SAYERS = new Set(['say', 'may']);
const DESCRIBES = 'v.pipe(schema, v.description(meaning))';
const PARTS = /[\\/]schema-parts\.ts$/;

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}
interface Call extends Node {
  readonly callee: Node & { readonly name?: string };
  readonly arguments: readonly Node[];
}
const isNode = (v: unknown): v is Node => typeof v === 'object' && v !== null && 'type' in v && 'start' in v;
const isCall = (node: Node): node is Call => node.type === 'CallExpression';

/** Where the second argument of each sayer lies, with its comma. */
function findMeanings(node: Node, found: [number, number][] = []): [number, number][] {
  if (isCall(node) && node.arguments.length === 2 && SAYERS.has(node.callee.name ?? '')) {
    const [schema, meaning] = node.arguments;
    found.push([schema.end, meaning.end]);
  }
  for (const inner of Object.values(node).flat()) if (isNode(inner)) findMeanings(inner, found);
  return found;
}

/** Of the text of a module. */
export function dropMeanings(code: string): string {
  let bare = code;
  // from the end, so that the places before it stay
  const meanings = findMeanings(parseAst(code, { lang: 'ts' })).sort((a, b) => b[0] - a[0]);
  for (const [from, to] of meanings) bare = bare.slice(0, from) + bare.slice(to);
  return bare;
}

export function bareSchemasPlugin(): Plugin {
  return {
    name: 'shapeflight-bare-schemas',
    apply: 'build',
    transform: {
      filter: { id: /[\\/]sim[\\/]files[\\/][\w-]+\.ts$/ },
      handler(code, id) {
        if (!PARTS.test(id)) return { code: dropMeanings(code), map: null };
        if (!code.includes(DESCRIBES))
          throw new Error(`schema-parts.ts no longer says "${DESCRIBES}": look again at how a field says its meaning.`);
        return { code: dropMeanings(code.replace(DESCRIBES, 'schema')), map: null };
      },
    },
  };
}
