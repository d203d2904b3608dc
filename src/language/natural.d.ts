// natural ships types only for its whole; these are its deep modules as used here.
declare module "natural/lib/natural/stemmers/porter_stemmer.js" {
  const porter: { stem(word: string): string };
  export default porter;
}
declare module "natural/lib/natural/distance/jaro-winkler_distance.js" {
  export default function jaroWinkler(a: string, b: string, options?: { ignoreCase?: boolean }): number;
}
declare module "natural/lib/natural/phonetics/double_metaphone.js" {
  const DoubleMetaphone: unknown;
  export default DoubleMetaphone;
}
