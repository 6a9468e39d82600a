/** The skeleton of a BVH file. Joints are read one after the other, however deep they lie in each other. */
import { FieldError } from '../math/field-error.ts';
import type { Triple } from '../math/vec3.ts';
import { checkName } from './file-place.ts';
import { measuredOf } from './read-number.ts';
import { checkColumns, RECORDING_LIMITS } from './recording-limits.ts';

interface BvhChannel {
  readonly isPlace: boolean;
  readonly axis: 0 | 1 | 2;
}

export interface BvhJoint {
  readonly name: string;
  readonly parent: number;
  readonly offset: Triple;
  readonly ends: readonly Triple[];
  readonly channels: readonly BvhChannel[];
}

/** Words of a text, one after the other. */
export interface BvhWords {
  peek(): string | undefined;
  /** `wanted`: what is said to be needed where the file ends */
  take(wanted: string): string;
  where(what?: string): string;
  /** what is left of the present line */
  rest(): readonly string[];
}

export function expectWord(words: BvhWords, wanted: string): void {
  const word = words.take(wanted);
  if (word.toUpperCase() !== wanted) throw new FieldError(words.where(), word, wanted);
}

interface Open {
  name: string;
  parent: number;
  offset?: Triple;
  channels?: BvhChannel[];
  ends: Triple[];
}

const MEMBERS = 'OFFSET, CHANNELS, JOINT, End Site or }';

export function readHierarchy(words: BvhWords): BvhJoint[] {
  expectWord(words, 'HIERARCHY');
  expectWord(words, 'ROOT');
  const joints: Open[] = [];
  /** indices of the joints that are open, the innermost last */
  const open: number[] = [];
  const begin = (): void => {
    const name = readName(words);
    joints.push({ name, parent: open.at(-1) ?? -1, ends: [] });
    checkColumns(words.where('JOINT'), joints.length, 'joints');
    open.push(joints.length - 1);
  };
  let ends = 0;
  begin();
  while (open.length > 0) {
    const joint = joints[open[open.length - 1]];
    const word = words.take(MEMBERS);
    switch (word.toUpperCase()) {
      case 'OFFSET':
        if (joint.offset) throw new FieldError(words.where(joint.name), 'a second OFFSET', 'one OFFSET a joint');
        joint.offset = readOffset(words);
        break;
      case 'CHANNELS':
        if (joint.channels) throw new FieldError(words.where(joint.name), 'a second line CHANNELS', 'one a joint');
        joint.channels = readChannels(words);
        break;
      case 'JOINT':
        begin();
        break;
      case 'END':
        joint.ends.push(readEnd(words));
        checkColumns(words.where('End Site'), ++ends, 'ends of branches');
        break;
      case '}':
        if (!joint.offset) throw new FieldError(words.where(`${joint.name} OFFSET`), undefined, 'three numbers');
        open.pop();
        break;
      default:
        throw new FieldError(words.where(joint.name), word, MEMBERS);
    }
  }
  if (words.peek()?.toUpperCase() === 'ROOT')
    throw new FieldError(words.where(), 'a second ROOT', 'one skeleton a file: save each performer in a file');
  if (joints.every(({ channels }) => (channels ?? []).length === 0))
    throw new FieldError(words.where('CHANNELS'), 'no channel in any joint', 'at least one joint that moves');
  return joints.map(({ name, parent, offset, channels, ends }) => ({
    name,
    parent,
    offset: offset ?? [0, 0, 0],
    channels: channels ?? [],
    ends,
  }));
}

/** Up to the brace; a name may have spaces. */
function readName(words: BvhWords): string {
  const parts: string[] = [];
  let length = 0;
  for (let word = words.take('a name and {'); word !== '{'; word = words.take('{ after the name')) {
    parts.push(word);
    length += word.length + 1;
    if (length > RECORDING_LIMITS.name + 1)
      throw new FieldError(
        words.where(),
        parts.join(' '),
        `a name of at most ${RECORDING_LIMITS.name} characters and {`,
      );
    if (word === '}') throw new FieldError(words.where(), word, '{ after the name');
  }
  const name = checkName(words.where('name'), parts.join(' '));
  if (name === '') throw new FieldError(words.where('name'), '', 'a name before {');
  return name;
}

function readOffset(words: BvhWords): Triple {
  const read = (): number => {
    const x = measuredOf(words.take('three numbers'), () => words.where('OFFSET'));
    if (Number.isNaN(x)) throw new FieldError(words.where('OFFSET'), x, 'three numbers');
    return x;
  };
  return [read(), read(), read()];
}

function readEnd(words: BvhWords): Triple {
  const name: string[] = [];
  for (let word = words.take('Site {'); word !== '{'; word = words.take('{'))
    if (name.push(word) > 10) throw new FieldError(words.where('End Site'), name.join(' '), '{ after End Site');
  expectWord(words, 'OFFSET');
  const end = readOffset(words);
  expectWord(words, '}');
  return end;
}

function readChannels(words: BvhWords): BvhChannel[] {
  const text = words.take('the number of channels');
  const count = Number(text);
  if (!/^[0-6]$/.test(text)) throw new FieldError(words.where('CHANNELS'), text, '0 to 6');
  const channels: BvhChannel[] = [];
  for (let k = 0; k < count; k++) {
    const word = words.take('a channel');
    const found = /^([XYZ])(POSITION|ROTATION)$/.exec(word.toUpperCase());
    if (!found)
      throw new FieldError(
        words.where('CHANNELS'),
        word,
        `${count} of Xposition ... Zposition, Xrotation ... Zrotation`,
      );
    const channel = { axis: 'XYZ'.indexOf(found[1]) as 0 | 1 | 2, isPlace: found[2] === 'POSITION' };
    if (channels.some((c) => c.axis === channel.axis && c.isPlace === channel.isPlace))
      throw new FieldError(words.where('CHANNELS'), word, 'each channel once');
    channels.push(channel);
  }
  return channels;
}
