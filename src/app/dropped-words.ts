/** Words of files that were dropped or chosen together. */
export const droppedTexts = {
  opened: (n: number, title: string) =>
    `${n} skills were opened. ${title} is shown; undo leads to the ${n === 2 ? 'other' : 'others'}.`,
  refused: (n: number, of: number) => `${n} of ${of} files were not opened.`,
  line: (name: string, reason: string) => `${name}: ${reason}`,
  more: (n: number) => `and ${n} more.`,
  kept: 'The rest was opened.',
  cancelled: 'it was cancelled.',
  /** in the place of the name of a file */
  text: 'The dropped text',
  notText:
    'What was dropped holds no skill. Drop files of skills, athletes or worksheets here, the text of one, or a link to a skill or worksheet.',
  tooMany: (most: number) => `at most ${most} files are opened at once.`,
};
