/**
 * Largest file, in bytes. A rehearsal of ten minutes is about 10 kB of text, and about 300 kB as JSON with a time
 * for each word; a whole day's recording in that form is near 20 MB. What is larger is not a transcript.
 */
export const MAX_BYTES = 32 * 1024 * 1024;

/** Most words. At 160 words a minute this is more than thirty hours of unbroken talk. */
export const MAX_WORDS = 300_000;

/** Latest time believed, in seconds (100 hours). A larger one is a clock of another kind (a date, milliseconds). */
export const MAX_SECONDS = 360_000;

/** Longest "[...]" or "(...)" that counts as one mark, in characters. What is longer is a sentence in brackets. */
export const MAX_MARK_LENGTH = 80;

/** Longest speaker label, in characters. Longer text before a colon is speech. */
export const MAX_LABEL_LENGTH = 40;
