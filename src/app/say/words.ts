/** Words of the flight said aloud. */
export const saidTexts = {
  by: (skill: string, athlete: string) => `${skill}, by ${athlete}.`,
  field: (label: string, value: string) => `${label}: ${value}`,
  takeoff: (list: string) => `Take-off: ${list}.`,
  given: {
    swing: (stated: string, given: string) => `${stated ? `${stated}. ` : ''}Given by the swing: ${given}`,
    contact: (stated: string, given: string) => `${stated ? `${stated}. ` : ''}Given by the push: ${given}`,
  },
  hold: (shape: string, from: string, to: string) => `${shape} from ${from} to ${to} seconds`,
  shapes: (list: string) => `Shapes: ${list}.`,
  highest: (height: string, s: string) => `Highest: centre of mass at ${height}, at ${s} seconds.`,
  fastest: (rate: string, s: string) => `Fastest twist: ${rate}, at ${s} seconds.`,
  cautions: (n: number) => (n === 1 ? 'One caution:' : `${n} cautions, the first:`),
  none: 'No cautions.',
  inRanges: 'No joint is beyond its range.',
};
