declare module "natural/lib/natural/tfidf/tfidf.js" {
  /** Term frequency times inverse document frequency over added documents. */
  export default class TfIdf {
    addDocument(text: string): void;
    idf(term: string): number;
  }
}
