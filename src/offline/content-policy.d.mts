export function writePolicy(own?: Readonly<Record<string, readonly string[]>>): string;
export const pagePolicy: string;
export const contentSecurityPolicy: string;
