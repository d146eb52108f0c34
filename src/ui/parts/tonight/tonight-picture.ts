// The answer for tonight as a picture to send: the sentence, the drums with the notes to leave out crossed, and why.
// Drawn on white whatever the theme, so that it can be read in any message.
import type { TonightNote } from '../../../domain/knock-check/tonight-notes';
import type { NotePlace, PanLayout } from '../../../domain/pans/layout';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { TonightMessage } from '../../words/fall/tonight-message';
import { drawnMiddle, drawnRadius, rim } from '../drawing/pan-drawing-geometry';

const width = 1080;
const margin = 48;
const ink = '#16110c';
const soft = '#5d5246';
const stop = '#a8260f';
const paper = '#ffffff';
const heading = '"Barlow Condensed", "Arial Narrow", Arial, sans-serif';
const body = '"Barlow", Arial, sans-serif';

interface Block {
  readonly text: string;
  readonly font: string;
  readonly size: number;
  readonly colour: string;
}

/** PNG, 1080 px wide; null where the browser cannot draw it. */
export async function tonightPicture(
  message: TonightMessage,
  layout: PanLayout,
  notes: readonly TonightNote[],
): Promise<Uint8Array<ArrayBuffer> | null> {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d');
  if (!context) return null;
  await document.fonts.ready;
  const head = wrapped(context, [
    { text: `${message.pan} · ${message.when}`, font: `500 36px ${body}`, size: 36, colour: soft },
    { text: message.sentence, font: `800 96px ${heading}`, size: 96, colour: ink },
  ]);
  const why = wrapped(
    context,
    message.lines.map((text) => ({ text, font: `500 36px ${body}`, size: 36, colour: ink })),
  );
  const drums = layout.drums.filter((drum) => drum.notes.length > 0);
  const columns =
    drums.length === 0 ? 1 : drums.length <= 3 ? drums.length : drums.length > 9 ? 4 : 3;
  const drumSize = Math.min(760, (width - 2 * margin) / columns);
  const rows = Math.ceil(drums.length / columns);
  canvas.width = width;
  canvas.height = Math.ceil(2 * margin + heightOf(head) + rows * drumSize + heightOf(why) + 40);
  context.fillStyle = paper;
  context.fillRect(0, 0, canvas.width, canvas.height);
  let top = write(context, head, margin) + 20;
  const byNote = new Map(notes.map((note) => [note.note, note] as const));
  const left = (width - columns * drumSize) / 2;
  drums.forEach((drum, k) => {
    context.save();
    context.translate(
      left + drumSize * ((k % columns) + 0.5),
      top + drumSize * (Math.floor(k / columns) + 0.5),
    );
    const scale = drumSize / (2 * drawnRadius);
    context.scale(scale, scale);
    drawDrum(context, drum.notes, byNote, columns);
    context.restore();
  });
  top += rows * drumSize + 20;
  write(context, why, top);
  const blob = await new Promise<Blob | null>((done) => {
    canvas.toBlob(done, 'image/png');
  });
  return blob && new Uint8Array(await blob.arrayBuffer());
}

function drawDrum(
  context: CanvasRenderingContext2D,
  places: readonly NotePlace[],
  notes: ReadonlyMap<MidiNote, TonightNote>,
  columns: number,
): void {
  context.lineWidth = 4;
  context.strokeStyle = soft;
  context.beginPath();
  context.arc(0, 0, rim, 0, 2 * Math.PI);
  context.stroke();
  for (const place of places) {
    const { x, y } = drawnMiddle(place);
    const note = notes.get(place.note);
    const isOut = note !== undefined && !note.isUnread && note.action === 'avoid';
    context.lineWidth = 2.5;
    context.strokeStyle = isOut ? stop : soft;
    context.fillStyle = paper;
    context.beginPath();
    const turn = (place.clock * Math.PI) / 6;
    context.ellipse(x, y, rim * place.along, rim * place.across, turn, 0, 2 * Math.PI);
    context.fill();
    context.stroke();
    if (isOut) drawCross(context, x, y, rim * place.across * 0.6);
    context.fillStyle = isOut ? stop : ink;
    context.font = `700 ${isOut ? 14 : 11 * Math.min(1.6, columns)}px ${body}`;
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    const name = displayName(place.note);
    if (isOut) {
      // Over the cross, legible.
      context.lineWidth = 5;
      context.strokeStyle = paper;
      context.strokeText(name, x, y);
    }
    context.fillText(name, x, y);
  }
}

function drawCross(context: CanvasRenderingContext2D, x: number, y: number, reach: number): void {
  context.lineWidth = 4;
  context.beginPath();
  context.moveTo(x - reach, y - reach);
  context.lineTo(x + reach, y + reach);
  context.moveTo(x + reach, y - reach);
  context.lineTo(x - reach, y + reach);
  context.stroke();
}

/** Broken between words so that no line is wider than the picture. */
function wrapped(context: CanvasRenderingContext2D, blocks: readonly Block[]): readonly Block[] {
  return blocks.flatMap((block) => {
    context.font = block.font;
    const lines: string[] = [];
    for (const word of block.text.split(' ')) {
      const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
      const fits = context.measureText(longer).width <= width - 2 * margin;
      if (fits && lines.length > 0) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    return lines.map((text) => ({ ...block, text }));
  });
}

const lineHeight = 1.25;

const heightOf = (lines: readonly Block[]): number =>
  lines.reduce((sum, { size }) => sum + lineHeight * size, 0);

/** Where the next line would begin. */
function write(context: CanvasRenderingContext2D, lines: readonly Block[], from: number): number {
  let top = from;
  context.textAlign = 'left';
  context.textBaseline = 'top';
  for (const { text, font, size, colour } of lines) {
    context.font = font;
    context.fillStyle = colour;
    context.fillText(text, margin, top);
    top += lineHeight * size;
  }
  return top;
}
