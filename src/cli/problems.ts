import type { FindingCode } from "../problem/catalogue.ts";
import { ProblemError } from "../problem/problem.ts";

/** An error of one sentence and how to mend it. @param where the file, or the option or command, that is at fault. */
export function problem(code: FindingCode, where: string, message: string, mend?: string): ProblemError {
  return new ProblemError([{ code, severity: "error", file: where, message, ...(mend !== undefined && { mend }) }]);
}

/** What the operating system says, without its own code and path. */
export function systemReason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case "ENOENT":
      return "there is no such file or folder";
    case "EACCES":
    case "EPERM":
      return "the permission is missing";
    case "EISDIR":
      return "it is a folder";
    case "ENOTDIR":
      return "a part of the path is not a folder";
    case "ENOSPC":
      return "the disk is full";
    case "EROFS":
      return "the disk is read-only";
    case "ENAMETOOLONG":
      return "the name is too long";
    case "ELOOP":
      return "its links lead in a circle";
    default:
      return message;
  }
}
