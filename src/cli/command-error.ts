/** Bad input to a command: one clear line on stderr, exit code 2. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
}

/** Nothing in the spans of a search could be flown: nothing is written, exit code 3. */
export class NothingFlownError extends Error {
  override readonly name = 'NothingFlownError';
}

/** By name: the class of an error of another thread stays there. */
const BAD_INPUT: readonly string[] = [
  'ApexError',
  'CommandError',
  'FieldError',
  'GivenInputError',
  'LegEndError',
  'NoAgreementError',
  'NoReleaseError',
  'NoTouchdownError',
  'NothingFlownError',
  'ScheduleOrderError',
  'ScheduleValueError',
  'SingularBodyError',
  'SwingMovesError',
  'TakeoffError',
  'TooFastError',
];

/** Said of a flight, and not yet of the file that it is of. */
export const isOfFlight = (error: unknown): boolean =>
  error instanceof Error && BAD_INPUT.includes(error.name) && !SAYS_WHERE.includes(error.name);
const SAYS_WHERE: readonly string[] = ['CommandError', 'FieldError', 'GivenInputError', 'NothingFlownError'];

/** What to tell about bad input, on one line; undefined for a fault of ours. */
export function wordBadInput(error: unknown): string | undefined {
  return error instanceof Error && BAD_INPUT.includes(error.name) ? oneLine(error.message) : undefined;
}

/** Control characters of a hostile file reach no terminal. */
export const oneLine = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]+/gu, ' ').slice(0, 1000);

/** Lines of a result, with what a hostile file would drive a terminal by, turn a line round with or hide in it as spaces; two joiners belong to letters. */
export const printable = (text: string): string =>
  text.replace(/[^\P{Cc}\n\t]|(?![\u200c\u200d])\p{Cf}|[\u2028\u2029]|\p{Cs}/gu, ' ');

/** What the system said of a file, in plain words. */
export function wordSystemFault(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const words: Record<string, string> = {
    ENOENT: 'there is no such file or folder',
    ENOTDIR: 'there is no such folder',
    EISDIR: 'it is a folder',
    EACCES: 'permission denied',
    EPERM: 'permission denied',
    ELOOP: 'its links lead in a ring',
    EIO: 'the disk does not answer',
    EBUSY: 'another program has it',
    EFBIG: 'it is too large for the disk',
    EDQUOT: 'the disk is full',
    ENXIO: 'nothing is behind it',
    EPIPE: 'nothing reads it any more',
    ERR_INVALID_ARG_VALUE: 'no file can have this name',
    EROFS: 'the disk is read-only',
    ENOSPC: 'the disk is full',
    EMFILE: 'too many open files',
    ENAMETOOLONG: 'the name is too long',
  };
  if (Object.hasOwn(words, code)) return words[code];
  return code ? `the system says ${code}` : error instanceof Error ? error.message : String(error);
}
