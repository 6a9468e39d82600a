/** Paired parts and angles of a body have names that end in L or R: elbowFlexionL. */
export type BodySide = 'L' | 'R';

export const sideOf = (name: string): BodySide | undefined => /[LR]$/.exec(name)?.[0] as BodySide | undefined;

/** The name that both sides share. */
export const withoutSide = (name: string): string => name.replace(/[LR]$/, '');

export const otherSide = (name: string): string | undefined => {
  const side = sideOf(name);
  return side && withoutSide(name) + (side === 'L' ? 'R' : 'L');
};
