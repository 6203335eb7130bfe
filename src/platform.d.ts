/** The few globals that Node and a browser both have and that code below the shells may use. */
declare class TextEncoder {
  encode(text?: string): Uint8Array;
}
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean; ignoreBOM?: boolean });
  decode(bytes?: Uint8Array): string;
}
declare function atob(base64: string): string;
