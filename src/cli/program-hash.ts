declare const __PROGRAM_HASH__: string | undefined;

/**
 * SHA-256 of the built program with all the data inside it, written in by the build (src/build/bundle.mjs): what it made
 * of something is worth keeping for as long as this stays. Null when the sources run as they are.
 */
export const PROGRAM_HASH: string | null = typeof __PROGRAM_HASH__ === "undefined" ? null : __PROGRAM_HASH__;
