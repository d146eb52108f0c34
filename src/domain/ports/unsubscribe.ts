/** Call to stop listening to a port. */
export type Unsubscribe = () => void;
