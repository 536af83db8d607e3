import { inflateSync } from 'node:zlib';

/**
 * Straight lines of a PDF as they lie on its pages, mm from the lower left corner: enough of ISO 32000-1 for what chromium writes
 * (plain objects, deflated page contents), read without any program that draws.
 */

export interface PdfPage {
  /** mm */
  readonly width: number;
  readonly height: number;
  /** Subpaths of straight lines that are stroked or filled. */
  readonly paths: readonly (readonly PdfPoint[])[];
}

export type PdfPoint = readonly [x: number, y: number];

/** a b c d e f: x' = a x + c y + e, y' = b x + d y + f. */
type Matrix = readonly [number, number, number, number, number, number];

/** User space of PDF: 1/72 in. */
const MM = 25.4 / 72;

export function pdfPages(pdf: Buffer): PdfPage[] {
  const text = pdf.toString('latin1');
  return [...text.matchAll(/<<\/Type \/Page\n[\s\S]*?endobj/g)].map(([page]) => {
    const box = /\/MediaBox \[([-\d. ]+)\]/.exec(page)?.[1]?.split(' ').map(Number) ?? [];
    const [left = Number.NaN, bottom = Number.NaN, right = Number.NaN, top = Number.NaN] = box;
    const contents = /\/Contents (\d+) 0 R/.exec(page)?.[1];
    if (contents === undefined) throw new Error('A page without contents, or with several.');
    const width = (right - left) * MM;
    const height = (top - bottom) * MM;
    return { width, height, paths: pathsOf(streamOf(pdf, text, contents)) };
  });
}

/** The stream of an object, inflated. */
function streamOf(pdf: Buffer, text: string, object: string): string {
  const at = text.indexOf(`\n${object} 0 obj`);
  const head = /\/Length (\d+)[^>]*>>\s*stream\n/.exec(text.slice(at, at + 2000));
  if (at < 0 || head === null) throw new Error(`No stream in object ${object}.`);
  const start = at + head.index + head[0].length;
  return inflateSync(pdf.subarray(start, start + Number(head[1]))).toString('latin1');
}

function pathsOf(content: string): PdfPoint[][] {
  const paths: PdfPoint[][] = [];
  const saved: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let current: PdfPoint[][] = [];
  let operands: number[] = [];
  const point = (i: number): PdfPoint => onPaper(matrix, operands[i] ?? 0, operands[i + 1] ?? 0);
  const line = (): PdfPoint[] => current.at(-1) ?? [];
  for (const token of content.split(/\s+/)) {
    if (/^[-+]?(\d+\.?\d*|\.\d+)$/.test(token)) {
      operands.push(Number(token));
      continue;
    }
    switch (token) {
      case 'q':
        saved.push(matrix);
        break;
      case 'Q':
        matrix = saved.pop() ?? matrix;
        break;
      case 'cm':
        matrix = product(operands, matrix);
        break;
      case 'm':
        current.push([point(0)]);
        break;
      case 'l':
        line().push(point(0));
        break;
      case 'h': {
        const [first] = line();
        if (first !== undefined) line().push(first);
        break;
      }
      case 're': {
        const [x = 0, y = 0, w = 0, h = 0] = operands;
        const corners: PdfPoint[] = [
          [x, y],
          [x + w, y],
          [x + w, y + h],
          [x, y + h],
          [x, y],
        ];
        current.push(corners.map(([a, b]) => onPaper(matrix, a, b)));
        break;
      }
      case 'c':
        // A curve is no straight line: what came before it counts, and what comes after begins anew.
        current.push([point(4)]);
        break;
      case 'S':
      case 's':
      case 'f':
      case 'f*':
      case 'B':
      case 'b':
        paths.push(...current);
        current = [];
        break;
      case 'n':
        current = [];
        break;
    }
    operands = [];
  }
  return paths;
}

function product([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: readonly number[], m: Matrix): Matrix {
  const [A, B, C, D, E, F] = m;
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}

function onPaper([a, b, c, d, e, f]: Matrix, x: number, y: number): PdfPoint {
  return [(a * x + c * y + e) * MM, (b * x + d * y + f) * MM];
}
