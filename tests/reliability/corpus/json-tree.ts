// JSON as a tree that may hold what no JavaScript value is: a number beyond its range, a key twice. And its places, to damage one.

export type Tree = null | boolean | number | string | Tree[] | { [key: string]: Tree } | RawText | Entries;

/** Written as it is. */
export class RawText {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

/** An object with any keys in any order, and the same key as often as it is there. */
export class Entries {
  readonly list: readonly (readonly [string, Tree])[];
  constructor(list: readonly (readonly [string, Tree])[]) {
    this.list = list;
  }
}

export const isObject = (tree: Tree): tree is { [key: string]: Tree } =>
  typeof tree === 'object' &&
  tree !== null &&
  !Array.isArray(tree) &&
  !(tree instanceof RawText) &&
  !(tree instanceof Entries);

/** A value and where it is. */
export interface Place {
  readonly holder: Tree[] | { [key: string]: Tree };
  readonly key: string | number;
  readonly value: Tree;
  readonly path: string;
}

export function placesOf(root: Tree): Place[] {
  const found: Place[] = [];
  const walk = (tree: Tree, path: string): void => {
    if (Array.isArray(tree))
      tree.forEach((value, key) => {
        found.push({ holder: tree, key, value, path: `${path}[${key}]` });
        walk(value, `${path}[${key}]`);
      });
    else if (isObject(tree))
      for (const [key, value] of Object.entries(tree)) {
        found.push({ holder: tree, key, value, path: `${path}.${key}` });
        walk(value, `${path}.${key}`);
      }
  };
  walk(root, '');
  return found;
}

export function put({ holder, key }: Place, value: Tree): void {
  // a key may be called __proto__
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

export function takeAway({ holder, key }: Place): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
}

export function copyTree(tree: Tree): Tree {
  if (Array.isArray(tree)) return tree.map(copyTree);
  if (!isObject(tree)) return tree;
  const copy: { [key: string]: Tree } = {};
  for (const [key, value] of Object.entries(tree)) put({ holder: copy, key, value, path: '' }, copyTree(value));
  return copy;
}

export function writeTree(tree: Tree): string {
  if (tree instanceof RawText) return tree.text;
  if (Array.isArray(tree)) return `[${tree.map(writeTree).join(',')}]`;
  if (tree instanceof Entries) return writeEntries(tree.list);
  return isObject(tree) ? writeEntries(Object.entries(tree)) : JSON.stringify(tree);
}

const writeEntries = (list: readonly (readonly [string, Tree])[]): string =>
  `{${list.map(([key, value]) => `${JSON.stringify(key)}:${writeTree(value)}`).join(',')}}`;
