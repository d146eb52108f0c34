// The commands of the W3C WebDriver standard that the walks need, over whatever carries them.
import type { EnginePage } from './engine';

/** Each sends one command, and rejects with the driver's own words. */
export interface DriverCommands {
  navigate(url: string): Promise<void>;
  /** Runs the body of a function. */
  execute(script: string): Promise<unknown>;
  act(actions: readonly object[]): Promise<void>;
  sendKeys(element: string, text: string): Promise<void>;
}

/** The name under which an element travels (W3C WebDriver, "web element identifier"). */
const elementKey = 'element-6066-11e4-a52e-4f735466cecf';

/** The page of a browser that speaks WebDriver. */
export const drivenPage = (commands: DriverCommands): EnginePage => ({
  open: commands.navigate,
  evaluate: (expression) => commands.execute(`return ${expression};`),
  // By its place: a drawn note is no element that could be clicked by its name.
  clickAt: ({ x, y }) =>
    commands.act([
      {
        type: 'pointer',
        id: 'mouse',
        parameters: { pointerType: 'mouse' },
        actions: [
          { type: 'pointerMove', x, y, duration: 0, origin: 'viewport' },
          { type: 'pointerDown', button: 0 },
          { type: 'pointerUp', button: 0 },
        ],
      },
    ]),
  typeKeys: (text) =>
    commands.act([
      {
        type: 'key',
        id: 'keyboard',
        actions: [...text].flatMap((value) => [
          { type: 'keyDown', value },
          { type: 'keyUp', value },
        ]),
      },
    ]),
  async giveFile(fieldExpression, path) {
    const found = await commands.execute(`return ${fieldExpression};`);
    if (found === null || typeof found !== 'object' || !(elementKey in found)) {
      throw new Error('there is no field for the file');
    }
    await commands.sendKeys(String(found[elementKey]), path);
  },
});
