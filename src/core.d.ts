// What the floors before store may know of the bundler: a file of the project as text.
// The whole project has this from the bundler's own types; these floors are checked without them.
declare module '*?raw' {
  const text: string;
  export default text;
}
