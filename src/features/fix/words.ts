/** Words of "Fix the landing". */
export const fixTexts = {
  fix: 'Fix the landing',
  fixMeans:
    'Looks for the one smallest change that lands it: times first, then shapes, then the push, the rotation last',
  working: (done: number, all: number) => `Trying one change at a time, ${done} of ${all}`,
  stop: 'Stop',
  doIt: 'Do it',
  another: 'Another way',
  notNow: 'Not now',
  keepOld: 'Keep the old one beside it',
  oldName: 'Before the fix',
  would: (ending: string) => `Then: ${ending}.`,
  none: 'No small change lands it.',
  asksMore: 'It asks a joint or the take-off for more than is known, which the flight before did not.',
  nearest: (cue: string, ending: string) => `The nearest: ${cue}. Then: ${ending}. “Ask” looks wider.`,
  noneRest:
    'One and two changes at a time were tried: times by up to 0.15 s, angles by 25°, the push by 0.5 m/s, the rotation by 10 %. “Ask” looks wider.',
  wider: 'Ask',
  failed: 'The search could not be run:',
  keptOld: 'The old one is kept beside it, as a version in Compare.',
} as const;
