/** Words of the rows under the floor, folded and open. */
export const groundTexts = {
  folded: {
    joints: 'Arms and hips',
    tilt: 'Tilt',
    moments: 'Three moments',
    momentum: 'Momentum by part',
    energy: 'Energy',
  },
  fold: (row: string) => `Fold ${row}`,
  more: (n: number) => `${n} more rows`,
} as const;
