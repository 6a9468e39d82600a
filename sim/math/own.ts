/** A look-up by a name that comes from a file: "constructor" and "toString" are names as any other. */
export const own = <T>(table: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;
