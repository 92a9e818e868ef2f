/** What the build makes of data: `src/cli/aheadPlugin.ts`. */
declare module 'virtual:ahead/tables' {
  const numbers: import('../tables/packed.ts').PackedNumbers;
  export default numbers;
}

declare module 'virtual:ahead/words' {
  const words: import('../tables/packed.ts').PackedWords;
  export default words;
}

declare module 'virtual:ahead/examples' {
  const examples: readonly {
    /** File name. */
    readonly file: string;
    readonly title: string;
    /** Where the farm lies. */
    readonly note: string;
    /** Its text, and what it says where that could be read ahead. */
    readonly load: () => Promise<{
      readonly default: {
        readonly text: string;
        readonly ahead?: import('../study/ahead.ts').Ahead;
      };
    }>;
  }[];
  export default examples;
}

declare module 'virtual:ahead/weather' {
  const files: readonly {
    /** File name. */
    readonly file: string;
    readonly load: () => Promise<{ readonly default: import('../tables/weatherColumns.ts').WeatherColumns }>;
  }[];
  export default files;
}

declare module 'virtual:ahead/build' {
  /** Changes with every file the page is made from. */
  const build: string;
  export default build;
}
