/** A `.ferrule` file imported by code is its text: the bundler and the test runner both load it so. */
declare module "*.ferrule" {
  const text: string;
  export default text;
}
