/** Files as text, for the page: loaded with the first that is opened. */
import { checkFileSize, LARGEST_TEXT, textOfBytes, wordNoText } from '../../sim/index.ts';

export const filing = { textOfBytes, checkFileSize, LARGEST_TEXT, wordNoText };
export type Filing = typeof filing;
