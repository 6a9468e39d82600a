/**
 * A body of the same mass with other shares of it in arms and legs; head and trunk take the rest. In free flight the mass itself changes
 * nothing (momenta, moments and weights all grow with it), so it is not there to be found; how it is shared out is.
 */
import type { Body, GroupName } from '../body/body.ts';

/** Share of the body's mass in each group. */
export interface BodyShares {
  readonly arms: number;
  readonly legs: number;
}

const massOf = (body: Body, group: GroupName): number =>
  body.segments.reduce((sum, s) => sum + (s.group === group ? s.mass : 0), 0);

export const sharesOf = (body: Body): BodyShares => ({
  arms: massOf(body, 'arms') / body.mass,
  legs: massOf(body, 'legs') / body.mass,
});

export const hasShares = (body: Body): boolean => {
  const { arms, legs } = sharesOf(body);
  return arms > 0 && legs > 0 && massOf(body, 'upper') > 0;
};

/** Every segment of a group gets lighter or heavier by one factor, its moments with it. */
export function withShares(body: Body, { arms, legs }: BodyShares): Body {
  const was = sharesOf(body);
  const factor: Readonly<Record<GroupName, number>> = {
    arms: arms / was.arms,
    legs: legs / was.legs,
    upper: (1 - arms - legs) / (1 - was.arms - was.legs),
    whole: 1,
  };
  return {
    ...body,
    segments: body.segments.map((s) => {
      const k = factor[s.group];
      const [a, b, c, d, e, f] = s.I_BBcm_B;
      return { ...s, mass: k * s.mass, I_BBcm_B: [k * a, k * b, k * c, k * d, k * e, k * f] };
    }),
  };
}
