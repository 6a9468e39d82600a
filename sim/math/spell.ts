/** Names of code in plain words. */

/** "hipFlexion" as "hip flexion". */
export const spell = (name: string): string => name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
