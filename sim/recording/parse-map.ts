/** A map of a recording as a file, and back. What a file states is by hand. */

import { checkMapFile, MAP_HEAD, type RecordingMapFile } from '../files/recording-map-file.ts';
import { FieldError } from '../math/field-error.ts';
import { jsonText } from '../math/json-text.ts';
import type { ColumnMeaning, MappedColumn, MappedPoint, RecordingMap } from './recording-map.ts';

type FileMeaning = NonNullable<RecordingMapFile['columns']>[number]['means'];

/** From parsed JSON. Throws a FieldError with path, value and what is allowed. */
export function parseMap(json: unknown): Partial<RecordingMap> {
  const { unitM, up, joints, points, columns } = checkMapFile(json);
  for (const [name, list] of Object.entries({ joints, points, columns })) checkOnce(name, list ?? []);
  return {
    ...(unitM === undefined ? {} : { unitM }),
    ...(up === undefined ? {} : { up }),
    ...(joints ? { joints: joints.map((joint) => ({ ...joint, basis: 'hand' as const })) } : {}),
    ...(points
      ? {
          points: points.map(
            ({ atM, isFixed, ...point }): MappedPoint => ({
              ...point,
              ...(atM ? { at_B: atM } : {}),
              ...(isFixed === undefined ? {} : { isFixed }),
              basis: 'hand',
            }),
          ),
        }
      : {}),
    ...(columns
      ? { columns: columns.map(({ from, means }): MappedColumn => ({ from, means: meaningOf(means), basis: 'hand' })) }
      : {}),
  };
}

/** As the text of its file. */
export function formatMap({ unitM, up, joints, points, columns }: Partial<RecordingMap>): string {
  const file: RecordingMapFile = {
    ...MAP_HEAD,
    ...(unitM === undefined ? {} : { unitM }),
    ...(up === undefined ? {} : { up }),
    ...(joints ? { joints: joints.map(({ from, segment }) => ({ from, segment })) } : {}),
    ...(points
      ? {
          points: points.map(({ from, segment, at_B, isFixed }) => ({
            from,
            segment,
            ...(at_B ? { atM: [...at_B] as [number, number, number] } : {}),
            ...(isFixed === undefined ? {} : { isFixed }),
          })),
        }
      : {}),
    ...(columns ? { columns: columns.map(({ from, means }) => ({ from, means: saidOf(means) })) } : {}),
  };
  return `${jsonText(file)}\n`;
}

function checkOnce(field: string, list: readonly { readonly from: string }[]): void {
  const seen = new Set<string>();
  for (const [i, { from }] of list.entries()) {
    if (seen.has(from)) throw new FieldError(`${field}[${i}].from`, from, 'each name once');
    seen.add(from);
  }
}

const AXES = ['x', 'y', 'z'] as const;
const PARTS = ['w', ...AXES] as const;
const COUNTS = [1, 2, 3] as const;

function meaningOf(m: FileMeaning): ColumnMeaning {
  switch (m.kind) {
    case 'angle':
      return { kind: 'angle', angle: m.angle, inRadians: m.unit === 'rad' };
    case 'point':
      return { ...m, axis: AXES.indexOf(m.axis) as 0 | 1 | 2 };
    case 'quaternion':
      return { ...m, part: PARTS.indexOf(m.part) as 0 | 1 | 2 | 3 };
    case 'matrix':
      return { kind: 'matrix', of: m.of, part: 3 * (m.row - 1) + m.column - 1 };
    case 'attitude':
      return { kind: 'attitude', of: m.of, part: m.part, inRadians: m.unit === 'rad' };
    case 'ignored':
      return m;
  }
}

function saidOf(m: ColumnMeaning): FileMeaning {
  switch (m.kind) {
    case 'angle':
      return { kind: 'angle', angle: m.angle, unit: m.inRadians ? 'rad' : 'deg' };
    case 'point':
      return { ...m, axis: AXES[m.axis] };
    case 'quaternion':
      return { ...m, part: PARTS[m.part] };
    case 'matrix':
      return { kind: 'matrix', of: m.of, row: COUNTS[Math.floor(m.part / 3)], column: COUNTS[m.part % 3] };
    case 'attitude':
      return { kind: 'attitude', of: m.of, part: m.part, unit: m.inRadians ? 'rad' : 'deg' };
    case 'ignored':
      return m;
  }
}
