import Phaser from 'phaser';
import type { Palette } from '../design/palette';
import { NUMBERS_FONT } from '../design/palette';
import type { LandPainter } from '../map/landPainter';
import { type SizePx, toScreen, type View } from '../map/screenFrame';
import { drawMarks, type OnMap } from './mapMarks';
import { type MapSheet, mapSheet } from './mapSheet';

/** What the map is to show in the coming frame. */
export type MapPicture = { readonly view: View; readonly size: SizePx; readonly marks: OnMap };

export type MapWindow = {
  readonly resize: (size: SizePx) => void;
  readonly recolour: (palette: Palette, painter: LandPainter) => void;
  readonly close: () => void;
};

const SHEET = 'sheet';

/** The map in a Phaser game of its own: the painted sheet below, what moves above it, at the screen's own pixels. */
export function openMapWindow(
  parent: HTMLElement,
  firstPainter: LandPainter,
  firstPalette: Palette,
  dpr: number,
  picture: () => MapPicture,
): MapWindow {
  const sheet = mapSheet(firstPainter, dpr);
  let palette = firstPalette;
  const scene = new MapScene(sheet, dpr, picture, () => palette);
  const size = picture().size;
  const game = new Phaser.Game({
    type: Phaser.CANVAS,
    parent,
    width: Math.round(size.width * dpr),
    height: Math.round(size.height * dpr),
    scale: { mode: Phaser.Scale.NONE, zoom: 1 / dpr },
    backgroundColor: firstPalette['paper-2'],
    audio: { noAudio: true },
    banner: false,
    disableContextMenu: false,
    input: { keyboard: false, mouse: false, touch: false, gamepad: false },
    render: { antialias: true, pixelArt: false, roundPixels: false, powerPreference: 'low-power' },
    scene,
  });
  return {
    resize(next) {
      game.scale.resize(Math.round(next.width * dpr), Math.round(next.height * dpr));
    },
    recolour(next, painter) {
      palette = next;
      sheet.repaintWith(painter);
      scene.redrawNumbers();
    },
    close() {
      // The engine forgets this one of its own pictures (4.2.1); through it a shared pool of canvases would hold the game and its page.
      const forgotten = () => game.textures.tileSprite.destroy();
      if (game.isRunning) forgotten();
      else game.events.once('ready', forgotten);
      game.destroy(true);
    },
  };
}

class MapScene extends Phaser.Scene {
  private land!: Phaser.GameObjects.Image;
  private lines!: Phaser.GameObjects.Graphics;
  private readonly numbers: Phaser.GameObjects.Text[] = [];
  private textureSize = '';

  constructor(
    private readonly sheet: MapSheet,
    private readonly dpr: number,
    private readonly picture: () => MapPicture,
    private readonly palette: () => Palette,
  ) {
    super('map');
  }

  create(): void {
    this.sheet.follow(this.picture().view, this.picture().size, 0);
    this.takeTexture();
    this.land = this.add.image(0, 0, SHEET).setOrigin(0);
    this.lines = this.add.graphics();
  }

  override update(nowMs: number): void {
    const { view, size, marks } = this.picture();
    if (this.sheet.follow(view, size, nowMs)) this.takeTexture();
    const painted = this.sheet.painted()!;
    const at = toScreen(view, size, painted.centre);
    const { width, height } = this.sheet.canvas;
    // A sheet painted at fewer pixels than the screen has is stretched to the screen's.
    const scale = (this.sheet.paintedPx(size).width * this.dpr * view.pxPerM) / painted.pxPerM / width;
    const corner = { x: at.x * this.dpr - (width / 2) * scale, y: at.y * this.dpr - (height / 2) * scale };
    // On whole pixels lines stay as sharp as they were painted.
    this.land.setTexture(SHEET).setScale(scale).setPosition(Math.round(corner.x), Math.round(corner.y));
    this.lines.clear().setScale(this.dpr);
    const numbers = drawMarks(this.lines, marks, view, size, this.palette());
    this.showNumbers(numbers);
  }

  /** Their pictures may have been lost. */
  redrawNumbers(): void {
    for (const number of this.numbers) number.updateText();
  }

  private takeTexture(): void {
    const { canvas } = this.sheet;
    const now = `${canvas.width}x${canvas.height}`;
    if (now === this.textureSize) {
      (this.textures.get(SHEET) as Phaser.Textures.CanvasTexture).refresh();
      return;
    }
    if (this.textures.exists(SHEET)) this.textures.remove(SHEET);
    this.textures.addCanvas(SHEET, canvas)!.setFilter(Phaser.Textures.FilterMode.LINEAR);
    this.textureSize = now;
  }

  private showNumbers(wanted: readonly { readonly x: number; readonly y: number; readonly text: string; readonly colour: string }[]): void {
    while (this.numbers.length < wanted.length) {
      const made = this.add.text(0, 0, '', { fontFamily: NUMBERS_FONT, fontSize: '11px', fontStyle: '700', resolution: this.dpr });
      this.numbers.push(made.setOrigin(0.5).setScale(this.dpr));
    }
    this.numbers.forEach((number, i) => {
      const now = wanted[i];
      number.setVisible(now !== undefined);
      if (!now) return;
      if (number.text !== now.text) number.setText(now.text);
      if (number.style.color !== now.colour) number.setColor(now.colour);
      number.setPosition(now.x * this.dpr, now.y * this.dpr);
    });
  }
}
