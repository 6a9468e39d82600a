/** Words of what was measured in a clip, on paper. */
export const filmSectionTexts = {
  heading: 'Times from film',
  clip: 'Clip',
  flown: 'This flight',
  rate: (hz: string) => `Taken at ${hz} frames a second, as was typed; the file does not say so.`,
  rateOpen: 'How many frames a second were taken was not typed: times are those of the file.',
  errors: 'Each ± holds about nineteen of twenty.',
  noScale: 'No scale was set: nothing was measured in the picture itself.',
  length: 'Scale by a known length, as if the camera were level and square on.',
  plane: 'Scale by a rectangle on the floor.',
  posed: (frames: number) =>
    `The figure was posed by hand over ${frames === 1 ? '1 frame' : `${frames} frames`}. Tilt, twist and which side is which are inferred from one camera.`,
  unread: (why: string) => `What was measured in a clip cannot be read: ${why}.`,
} as const;
