/** Ids of inputs of the legs before: "leg1.contact.speedAlong", legs counted from 1; an input of the leg itself has no leg in front. */
const LEG = /^leg(\d+)\./;

/** "leg1." or nothing. */
export const legOf = (id: string): string => LEG.exec(id)?.[0] ?? '';

/** As the leg itself names it. */
export const ownId = (id: string): string => id.replace(LEG, '');

/** Counted from 0; undefined for an input of the leg itself. */
export function legIndexOf(id: string): number | undefined {
  const [, typed] = LEG.exec(id) ?? [];
  return typed === undefined ? undefined : Number(typed) - 1;
}
