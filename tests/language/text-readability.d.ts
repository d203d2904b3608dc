// The package ships no types; these are the calls the tests make.
declare module "text-readability" {
  const readability: {
    fleschKincaidGrade(text: string): number;
    lexiconCount(text: string): number;
    sentenceCount(text: string): number;
  };
  export default readability;
}
