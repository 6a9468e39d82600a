// Rules of damage to a tree of JSON. Each changes the tree that it is given and says what it did; undefined: there was nothing of its kind to damage.
import {
  copyTree,
  Entries,
  isObject,
  type Place,
  placesOf,
  put,
  RawText,
  type Tree,
  takeAway,
  writeTree,
} from './json-tree.ts';
import { NO_JSON, ODD_KEYS, ODD_NUMBERS, ODD_TEXTS, OTHER_FORMATS, OTHER_TYPES, OTHER_VERSIONS } from './odd-values.ts';
import type { Random } from './random.ts';

/** The root is in an object, so that it can be damaged like all else. */
interface Holder {
  root: Tree;
}
interface JsonRule {
  readonly name: string;
  readonly apply: (at: Holder, r: Random) => string | undefined;
}

const pick = (at: Holder, r: Random, isFit: (place: Place) => boolean = () => true): Place | undefined => {
  const fit = placesOf(at.root).filter(isFit);
  return fit.length > 0 ? r.of(fit) : undefined;
};

const isNumber = ({ value }: Place): boolean => typeof value === 'number';
const isText = ({ value }: Place): boolean => typeof value === 'string';
const isList = ({ value }: Place): boolean => Array.isArray(value) && value.length > 0;
const isBranch = ({ value }: Place): boolean => isObject(value) || Array.isArray(value);

/** One value of a place, by another. */
const exchange =
  (name: string, isFit: (place: Place) => boolean, by: (r: Random, place: Place) => Tree): JsonRule['apply'] =>
  (at, r) => {
    const place = pick(at, r, isFit);
    if (!place) return undefined;
    put(place, by(r, place));
    return `${name} at ${place.path}`;
  };

const TIMES = /^(s|startS|atS|timeS|lateS|durationS|releaseLateS|savedAt|no)$/;
const DEPTHS = [10, 39, 40, 41, 60, 2000, 50_000];
const deep = (r: Random): Tree => {
  const depth = r.of(DEPTHS);
  const [open, close] = r.of([
    ['[', ']'],
    ['{"a":', '}'],
    ['[{"phases":', '}]'],
  ]);
  return new RawText(`${open.repeat(depth)}1${close.repeat(depth)}`);
};

export const JSON_RULES: readonly JsonRule[] = [
  {
    name: 'another type',
    apply: exchange(
      'another type',
      () => true,
      (r) => r.of(OTHER_TYPES),
    ),
  },
  {
    name: 'a number of another size',
    apply: exchange('another size', isNumber, (r, { value }) => resize(r, Number(value))),
  },
  { name: 'an odd number', apply: exchange('an odd number', isNumber, (r) => r.of(ODD_NUMBERS)) },
  { name: 'a number as text', apply: exchange('as text', isNumber, (r, { value }) => asText(r, Number(value))) },
  { name: 'an odd text', apply: exchange('an odd text', isText, (r) => r.of(ODD_TEXTS)) },
  {
    name: 'no JSON',
    apply: exchange(
      'no JSON',
      () => true,
      (r) => r.of(NO_JSON),
    ),
  },
  { name: 'deep', apply: exchange('deep', () => true, deep) },
  {
    name: 'a text of elsewhere in the file',
    apply: (at, r) => {
      const [a, b] = [pick(at, r, isText), pick(at, r, isText)];
      if (!a || !b) return undefined;
      put(a, b.value);
      return `the text of ${b.path} at ${a.path}`;
    },
  },
  {
    name: 'a list of great length',
    apply: (at, r) => {
      const place = pick(at, r, isList);
      if (!place || !Array.isArray(place.value)) return undefined;
      const times = r.of([2, 13, 101, 300]);
      const long = Array.from({ length: times }, () => place.value as Tree[]).flat();
      put(place, long.slice(0, 20_000));
      return `${times} times the list ${place.path}`;
    },
  },
  {
    name: 'missing',
    apply: (at, r) => {
      const place = pick(at, r);
      if (!place) return undefined;
      takeAway(place);
      return `without ${place.path}`;
    },
  },
  {
    name: 'a key too many',
    apply: (at, r) => {
      const place = pick(at, r, ({ value }) => isObject(value));
      const object = place?.value ?? at.root;
      if (!isObject(object)) return undefined;
      const key = r.of(ODD_KEYS);
      put({ holder: object, key, value: null, path: '' }, r.isHit(0.5) ? { x: 1 } : r.of(OTHER_TYPES));
      return `${JSON.stringify(key)} in ${place?.path ?? 'the root'}`;
    },
  },
  {
    name: 'a key renamed',
    apply: (at, r) => {
      const place = pick(at, r, ({ key }) => typeof key === 'string');
      if (!place || !isObject(place.holder)) return undefined;
      const { key, value } = place;
      takeAway(place);
      const name = r.of([String(key).toUpperCase(), `${key} `, `${key}s`, String(key).slice(1), r.of(ODD_KEYS)]);
      put({ ...place, key: name }, value);
      return `${place.path} called ${JSON.stringify(name)}`;
    },
  },
  {
    name: 'a key twice',
    apply: (at, r) => {
      const place = pick(at, r, ({ value }) => isObject(value) && Object.keys(value).length > 0);
      if (!place || !isObject(place.value)) return undefined;
      const list = Object.entries(place.value);
      const [key, value] = r.of(list);
      const isSame = r.isHit(0.5);
      put(place, new Entries([...list, [key, isSame ? value : r.of(OTHER_TYPES)]]));
      return `${key} twice in ${place.path}`;
    },
  },
  {
    name: 'two exchanged',
    apply: (at, r) => {
      const [a, b] = [pick(at, r), pick(at, r)];
      if (!a || !b || a.path.startsWith(b.path) || b.path.startsWith(a.path)) return undefined;
      put(a, copyTree(b.value));
      put(b, copyTree(a.value));
      return `${a.path} and ${b.path} exchanged`;
    },
  },
  {
    name: 'a branch elsewhere',
    apply: (at, r) => {
      const [from, to] = [pick(at, r, isBranch), pick(at, r)];
      if (!from || !to) return undefined;
      put(to, copyTree(from.value));
      return `${from.path} at ${to.path} too`;
    },
  },
  {
    name: 'another order',
    apply: (at, r) => {
      const place = pick(at, r, ({ value }) => Array.isArray(value) && value.length > 1);
      if (!place || !Array.isArray(place.value)) return undefined;
      const list = [...place.value];
      if (r.isHit(0.5)) list.reverse();
      else list.push(...list.splice(0, 1 + r.int(list.length - 1)));
      put(place, list);
      return `another order of ${place.path}`;
    },
  },
  {
    name: 'times that are equal or go back',
    apply: (at, r) => {
      const times = placesOf(at.root).filter((one) => isNumber(one) && TIMES.test(String(one.key)));
      if (times.length < 2) return undefined;
      const [a, b] = [r.of(times), r.of(times)];
      put(a, Number(b.value) - (r.isHit(0.5) ? 0 : r.of([1e-12, 0.001, 0.5])));
      return `the time of ${b.path} at ${a.path}`;
    },
  },
  {
    name: 'once more',
    apply: (at, r) => {
      const place = pick(at, r, ({ holder }) => Array.isArray(holder));
      if (!place || !Array.isArray(place.holder)) return undefined;
      place.holder.splice(Number(place.key), 0, copyTree(place.value));
      return `${place.path} once more`;
    },
  },
  {
    name: 'a name that leads nowhere',
    apply: exchange(
      'no such name',
      ({ key, value }) =>
        typeof value === 'string' &&
        /^(shape|base|angle|ref|parent|joint|segment|from|anchor|mirror|place|skill)$/.test(String(key)),
      (r) => r.of(['nowhere', 'straigt', 'hip', '__proto__', 'constructor', 'toString', '', ' ', 'x'.repeat(100)]),
    ),
  },
  {
    name: 'another version',
    apply: exchange(
      'another version',
      ({ key }) => key === 'version',
      (r) => r.of(OTHER_VERSIONS),
    ),
  },
  {
    name: 'another format',
    apply: exchange(
      'another format',
      ({ key }) => key === 'format',
      (r) => r.of(OTHER_FORMATS),
    ),
  },
  {
    name: 'another kind',
    apply: exchange(
      'another kind',
      ({ key, value }) => key === 'kind' && typeof value === 'string',
      (r) =>
        r.of([
          'flight',
          'swing',
          'contact',
          'catch',
          'landing',
          'entry',
          'human',
          'tree',
          'number',
          'words',
          'mat',
          'skill',
          'athlete',
          'point',
          '',
          'fly',
          'constructor',
        ]),
    ),
  },
  {
    name: 'another root',
    apply: (at, r) => {
      const { root } = at;
      at.root = r.of<() => Tree>([
        () => [root],
        () => ({ root }),
        () => JSON.stringify(writeTree(root)),
        () => null,
        () => 1,
        () => 'text',
        () => [],
        () => ({}),
        () => true,
        () => [1, 2, 3],
      ])();
      return 'another root';
    },
  },
];

const resize = (r: Random, x: number): number =>
  r.of([-x, 10 * x, x / 10, 1000 * x, -1000 * x, x * 1e-9, x + 1e-12, x - 1e-9, Math.round(x), x + 0.5, 1e6 * x, 0]);

const asText = (r: Random, x: number): string =>
  r.of([String(x), ` ${x} `, String(x).replace('.', ','), `${x} kg`, `${x} m`, `${x}°`, `${x}%`, `"${x}"`, `+${x}`]);

/** A sound tree damaged by one rule, seldom by two. */
export function damageJson(sound: unknown, r: Random): { readonly text: string; readonly what: string } {
  const at: Holder = { root: structuredClone(sound) as Tree };
  const said: string[] = [];
  const times = r.isHit(0.2) ? 2 : 1;
  while (said.length < times) {
    const rule = r.of(JSON_RULES);
    const did = rule.apply(at, r);
    if (did !== undefined) said.push(`${rule.name}: ${did}`);
    if (!isObject(at.root)) break;
  }
  return { text: writeTree(at.root), what: said.join('; ') };
}
