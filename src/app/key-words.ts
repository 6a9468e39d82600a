/** Words of work on keys and of adding a shape. */
export const keyTexts = {
  moveTakes: 'The move takes',
  laid: (shape: string) => `Add ${shape}`,
  laidAt: (shape: string, s: string) => `${shape} added at ${s} seconds`,
  keptAs: (title: string) => `${title} is kept in this browser`,
  copiedKeys: (n: number) => (n === 1 ? '1 key copied' : `${n} keys copied`),
  copiedPose: (s: string) => `Pose at ${s} seconds copied`,
  pastedPose: 'Paste pose',
  pastedKeys: 'Paste keys',
  mirroredPose: 'Mirror pose',
  mirroredKeys: 'Mirror keys',
  scaled: 'Stretch keys in time',
  movedKeys: 'Move keys in time',
  removed: (n: number) => (n === 1 ? 'Delete 1 key' : `Delete ${n} keys`),
  pickedCount: (n: number) => (n === 1 ? '1 key picked' : `${n} keys picked`),
  pickedBar: 'Picked keys',
  bar: {
    copy: 'Copy',
    paste: 'Paste',
    mirror: 'Mirror',
    remove: 'Delete',
    earlier: 'Earlier',
    later: 'Later',
    closer: 'Closer',
    apart: 'Apart',
    none: 'Pick none',
  },
  marks: { takeoff: 'take-off', apex: 'apex', touchdown: 'touchdown' } as Record<string, string>,
  quarters: (n: number) =>
    n % 4 === 0
      ? n === 4
        ? '1 somersault'
        : `${n / 4} somersaults`
      : `${n > 4 ? `${Math.floor(n / 4)} ` : ''}${['', '¼', '½', '¾'][n % 4]} somersault`,
  atKey: 'with a key',
  poseMark: (s: string, n: number) => (n === 1 ? `Pose at ${s} seconds, 1 key` : `Pose at ${s} seconds, ${n} keys`),
  poseMarkHint: 'Drag it to retime all its keys; arrow keys move it, Delete deletes it',
  poseMoved: 'Pose',
  retimedPose: 'Retime pose',
  tileFrom: (shape: string) => `${shape}, moved whole,`,
  tileHint: 'drag it to retime it; Alt with an arrow key moves it',
  spanEnd: (end: 'from' | 'to') => (end === 'from' ? 'First picked key' : 'Last picked key'),
  scaledTo: (percent: string) => `${percent} % of the time`,
} as const;
