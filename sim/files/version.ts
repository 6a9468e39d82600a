/** The version of program and library; that of package.json, by a test. */
export const VERSION = '0.1.0';
