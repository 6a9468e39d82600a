/** Words of "Hand on". */
export const handTexts = {
  handed: 'Handed on:',
  skill: 'the skill',
  and: 'and',
  height: (height: string, sex: string) => `height ${height}, ${sex}`,
  body: 'the body',
  /** what stays, after the first word a small letter */
  stays: (what: readonly string[]) =>
    what.length === 0
      ? 'Nothing of the athlete stays here.'
      : `${capital(listed(what))} ${what.length > 1 || what[0] === 'the measures' ? 'stay' : 'stays'} here.`,

  /** in place of a caution whose numbers give the mass away */
  momentumBeyond: 'The take-off gives more angular momentum than is known for such a body.',

  clip: 'the clip',
  clipHint: (isBlurred: boolean) =>
    `in a file alone; ${isBlurred ? 'blurred all over' : 'not blurred: faces can be seen'}`,
  travels: 'What travels',
  travelsToo: 'Send too',
  skillHint: 'shapes, times, take-off',
  /** there are versions beside it */
  skillHintA: 'shapes, times, take-off as they are now; other versions stay here',
  sexes: { female: 'female', male: 'male' },
  heightHint: 'the flight needs both: lengths and masses of the segments follow from them',
  measured: 'measured segments',
  measuredHint: 'as shares of the body: the flight needs them',

  waysLabel: 'Ways to hand on',
  keys: 'Enter: do it · ↑ ↓: next way · T: what travels · Esc: back to the bench',
  cannot: (reason: string) => `This skill cannot be handed on: ${reason}.`,
  cancel: 'Cancel',
  close: 'Close',

  address: 'Address of the bench',
  noAddress: 'none',
  addressHint: 'Links begin with it. Set it in Menu.',
  noAddressHint: 'Without one there is no code, and a link is copied without its beginning.',
  change: 'Change in Menu',

  link: {
    name: 'Link',
    verb: 'Copy link',
    short: 'Copy',
    hint: (letters: string) => `opens in any browser; no server keeps it, ${letters} letters`,
    bare: (letters: string) => `${letters} letters, to be put behind the address of any bench`,
    letters: (letters: string) => `${letters} letters`,
    copied: 'Copied.',
    notCopied: 'The browser did not let it be copied. Select it here:',
    whole: 'The whole link',
  },
  code: {
    name: 'Code to scan',
    verb: 'Show it large',
    short: 'Show',
    label: 'Code to scan: the link of this skill',
    hint: 'the same link as a picture, for the camera of another device',
    hint2: 'nothing is sent: the other device reads it off the screen',
    withoutSheets: 'its sheets are left out: with them the code would be too fine',
    brief: 'for another phone',
    opens: 'Opens this skill.',
    scan: 'Point the camera of the other device at it.',
    noAddress: 'No code: this bench has no address. Set one in Menu.',
    long: 'This skill is too long for a code. The file works.',
  },
  share: {
    name: 'Share',
    verb: 'Share the skill …',
    short: 'Share …',
    link: "its link, by the device's own sharing",
    file: "its file, by the device's own sharing",
    text: "its file as text, by the device's own sharing; it opens here again",
    hint2: 'you choose there who gets it',
    absent: 'This browser has no sharing of its own here. Copy the link, or save the file.',
    cannot: 'This device cannot share it. The file works.',
    refused: 'The device did not share it. The file works.',
  },
  file: {
    name: 'File',
    verb: 'Save file',
    short: 'Save',
    hint: (kB: string) => `with its sheets, ${kB}, JSON`,
    withClip: (name: string, isBlurred: boolean) => `and the clip ${name}, ${isBlurred ? 'blurred' : 'not blurred'}`,
    making: (made: string, of: string) => `writing the clip: ${made} of ${of} pictures`,
    notWritten: 'The clip could not be written.',
    hint2: 'saved where this browser saves; opens here again',
    saved: 'Saved.',
  },
} as const;

const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
