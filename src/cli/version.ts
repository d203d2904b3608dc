import { version } from "../../package.json";

/** Of the program, as its package says. The bundler writes in this one field. */
export const VERSION: string = version;
