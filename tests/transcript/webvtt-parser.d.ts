declare module "webvtt-parser" {
  export interface WebVttNode {
    type: "text" | "object" | "timestamp";
    name?: string;
    value?: string | number;
    children?: WebVttNode[];
  }
  export interface WebVttCue {
    startTime: number;
    endTime: number;
    text: string;
    tree: { children: WebVttNode[] };
  }
  export class WebVTTParser {
    constructor(entities?: Record<string, string>);
    parse(text: string, mode?: string): { cues: WebVttCue[]; errors: { message: string; line: number }[] };
  }
}
