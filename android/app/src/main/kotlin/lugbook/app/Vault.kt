package lugbook.app

/** Where this phone keeps the 32 secret bytes that it seals with. Never asked on the main thread. */
interface Vault {
    /** The bytes: made when they are first asked for, the same ever after; none where they can't be had. */
    fun secret(): ByteArray?
}
