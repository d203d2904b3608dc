export function excerptArguments(): string[];
export function withExcerpt(readme: string, sheet: string): string;
