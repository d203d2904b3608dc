import { homedir } from "node:os";
import { isAbsolute, join, resolve } from "node:path";

type Environment = Readonly<Record<string, string | undefined>>;

const NAME = "saidwell";

/**
 * Where the program keeps what it could work out again: SAIDWELL_CACHE, else the place that the system has for it. That
 * is $XDG_CACHE_HOME or ~/.cache (XDG Base Directory Specification 0.8, which has relative paths ignored), on Windows
 * %LOCALAPPDATA%.
 * @returns null when nothing is to be kept (SAIDWELL_CACHE=off), or there is no such place.
 */
export function cacheFolder(environment: Environment, platform: NodeJS.Platform = process.platform, home: () => string = homedir): string | null {
  const wish = environment["SAIDWELL_CACHE"]?.trim() ?? "";
  if (wish === "off") return null;
  if (wish !== "") return resolve(wish);
  if (platform === "win32") {
    const local = environment["LOCALAPPDATA"] ?? "";
    return local === "" ? null : join(local, NAME, "cache");
  }
  const base = environment["XDG_CACHE_HOME"] ?? "";
  if (isAbsolute(base)) return join(base, NAME);
  const own = homeOf(home);
  return isAbsolute(own) ? join(own, ".cache", NAME) : null;
}

/** A user without an entry in the system's list has no home. */
function homeOf(home: () => string): string {
  try {
    return home();
  } catch {
    return "";
  }
}
