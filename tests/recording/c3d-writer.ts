// C3D files for tests, in every encoding, and with any lie: written from the published description, apart from the reader.

export type Processor = 'Intel' | 'DEC' | 'MIPS';

export interface Parameter {
  readonly name: string; // "POINT:RATE"
  readonly type: -1 | 1 | 2 | 4;
  readonly dimensions: readonly number[];
  readonly values: readonly number[] | string;
}

export interface C3dSpec {
  readonly processor?: Processor;
  readonly isFloat?: boolean;
  /** of whole numbers */
  readonly scale?: number;
  readonly labels: readonly string[];
  /** frames x points x 3; null: residual -1 */
  readonly frames: readonly (readonly (readonly number[] | null)[])[];
  readonly rate?: number;
  readonly units?: string;
  /** values behind the points of each frame */
  readonly analog?: number;
  readonly isLocked?: boolean;
  /** labels in one parameter */
  readonly labelsEach?: number;
  readonly extra?: readonly Parameter[];
  readonly leaveOut?: readonly string[];
  /** bytes to put over the finished file */
  readonly over?: readonly (readonly [at: number, ...bytes: number[]])[];
  readonly header?: {
    readonly first?: number;
    readonly last?: number;
    readonly points?: number;
    readonly start?: number;
  };
}

class Writer {
  readonly out: number[] = [];
  readonly processor: Processor;

  constructor(processor: Processor) {
    this.processor = processor;
  }

  byte(...bytes: number[]): void {
    this.out.push(...bytes.map((b) => b & 255));
  }

  word(x: number): void {
    const pair = [x & 255, (x >> 8) & 255];
    this.byte(...(this.processor === 'MIPS' ? pair.reverse() : pair));
  }

  float(x: number): void {
    const view = new DataView(new ArrayBuffer(4));
    // a VAX float is IEEE's bits of four times the number, its two words the other way round
    view.setFloat32(0, this.processor === 'DEC' ? 4 * x : x, this.processor !== 'MIPS');
    const b = [0, 1, 2, 3].map((k) => view.getUint8(k));
    this.byte(...(this.processor === 'DEC' ? [b[2], b[3], b[0], b[1]] : b));
  }

  text(s: string): void {
    this.byte(...new TextEncoder().encode(s));
  }

  block(): void {
    while (this.out.length % 512 !== 0) this.out.push(0);
  }
}

export const word = (name: string, ...values: number[]): Parameter => ({
  name,
  type: 2,
  dimensions: values.length === 1 ? [] : [values.length],
  values,
});
export const float = (name: string, value: number): Parameter => ({ name, type: 4, dimensions: [], values: [value] });
export const texts = (
  name: string,
  list: readonly string[],
  length = Math.max(...list.map((s) => s.length)),
): Parameter => ({
  name,
  type: -1,
  dimensions: list.length === 1 ? [length] : [length, list.length],
  values: list.map((s) => s.padEnd(length)).join(''),
});

export function writeC3d(spec: C3dSpec): Uint8Array {
  const { processor = 'Intel', isFloat = true, labels, frames, rate = 100, units = 'mm', analog = 0 } = spec;
  const scale = isFloat ? -1 : (spec.scale ?? 0.1);
  const first = spec.header?.first ?? 1;
  const each = spec.labelsEach ?? 255;
  const lists: Parameter[] = [];
  for (let k = 0; k * each < labels.length; k++)
    lists.push(texts(`POINT:LABELS${k === 0 ? '' : k + 1}`, labels.slice(k * each, (k + 1) * each)));
  const standard: Parameter[] = [
    word('POINT:USED', labels.length),
    float('POINT:SCALE', scale),
    float('POINT:RATE', rate),
    word('POINT:FRAMES', Math.min(65535, frames.length)),
    word('POINT:DATA_START', 0),
    texts('POINT:UNITS', [units]),
    texts('POINT:X_SCREEN', ['+X']),
    texts('POINT:Y_SCREEN', ['+Z']),
    ...lists,
    word('ANALOG:USED', analog),
  ];
  const over = new Set((spec.extra ?? []).map(({ name }) => name));
  const all = [
    ...standard.filter(({ name }) => !over.has(name) && !spec.leaveOut?.includes(name)),
    ...(spec.extra ?? []),
  ];

  const p = new Writer(processor);
  p.byte(1, 80, 0, { Intel: 84, DEC: 85, MIPS: 86 }[processor]);
  const groups = [...new Set(all.map(({ name }) => name.split(':')[0]))];
  const named = (name: string): void => p.byte(spec.isLocked ? -name.length : name.length);
  groups.forEach((group, g) => {
    named(group);
    p.byte(-(g + 1));
    p.text(group);
    p.word(5);
    p.byte(2);
    p.text('a ');
  });
  let dataStart = -1;
  all.forEach(({ name, type, dimensions, values }) => {
    const [group, own] = name.split(':');
    named(own);
    p.byte(groups.indexOf(group) + 1);
    p.text(own);
    const bytes = values.length * Math.abs(type);
    p.word(2 + 2 + dimensions.length + bytes + 1);
    p.byte(type, dimensions.length, ...dimensions);
    if (name === 'POINT:DATA_START') dataStart = p.out.length;
    if (typeof values === 'string') p.text(values);
    else for (const x of values) type === 4 ? p.float(x) : type === 2 ? p.word(x) : p.byte(x);
    p.byte(0);
  });
  p.byte(0, 0);
  p.block();
  const blocks = p.out.length / 512;
  p.out[2] = blocks & 255;
  const start = spec.header?.start ?? 2 + blocks;
  if (dataStart >= 0 && !over.has('POINT:DATA_START')) {
    const w = new Writer(processor);
    w.word(start);
    p.out.splice(dataStart, 2, ...w.out);
  }

  const h = new Writer(processor);
  h.byte(2, 80);
  h.word(spec.header?.points ?? labels.length);
  h.word(analog);
  h.word(first);
  h.word(spec.header?.last ?? Math.min(65535, first + frames.length - 1));
  h.word(10);
  h.float(scale);
  h.word(start);
  h.word(analog > 0 ? 1 : 0);
  h.float(rate);
  h.block();

  const d = new Writer(processor);
  for (const frame of frames) {
    for (const point of frame) {
      const cells = point ? [...point, 0] : [0, 0, 0, -1];
      for (const [k, x] of cells.entries()) isFloat ? d.float(x) : d.word(k < 3 ? Math.round(x / scale) : x);
    }
    for (let k = 0; k < analog; k++) isFloat ? d.float(k) : d.word(k);
  }
  d.block();
  const bytes = Uint8Array.from([...h.out, ...p.out].concat(d.out));
  for (const [at, ...put] of spec.over ?? []) bytes.set(put, at);
  return bytes;
}
