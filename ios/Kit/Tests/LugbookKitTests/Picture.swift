import Foundation

/// A PNG of one shade of gray, since Linux has no framework that writes one (PNG, 3rd edition; RFC 1950, RFC 1951).
func flatPicture(width: Int, height: Int, shade: UInt8) -> Data {
    let row = [0] + [UInt8](repeating: shade, count: width)
    let pixels = [UInt8](repeatElement(row, count: height).joined())
    var packed: [UInt8] = [0x78, 0x01]
    // Stored blocks: nothing is gained by packing tighter.
    for start in stride(from: 0, to: pixels.count, by: 0xffff) {
        let block = pixels[start..<min(start + 0xffff, pixels.count)]
        let size = UInt16(block.count)
        packed.append(start + block.count == pixels.count ? 1 : 0)
        packed += [UInt8(size & 0xff), UInt8(size >> 8), UInt8(~size & 0xff), UInt8(~size >> 8)]
        packed += block
    }
    packed += bytes(adler32(pixels))

    var picture = Data([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
    // Eight bits a pixel, gray.
    picture += chunk("IHDR", bytes(UInt32(width)) + bytes(UInt32(height)) + [8, 0, 0, 0, 0])
    picture += chunk("IDAT", packed)
    picture += chunk("IEND", [])
    return picture
}

private func chunk(_ name: String, _ data: [UInt8]) -> [UInt8] {
    let named = Array(name.utf8) + data
    return bytes(UInt32(data.count)) + named + bytes(crc32(named))
}

private func bytes(_ number: UInt32) -> [UInt8] { withUnsafeBytes(of: number.bigEndian) { Array($0) } }

private func adler32(_ data: [UInt8]) -> UInt32 {
    var low: UInt32 = 1
    var high: UInt32 = 0
    for byte in data {
        low = (low + UInt32(byte)) % 65_521
        high = (high + low) % 65_521
    }
    return high << 16 | low
}

private let remainders: [UInt32] = (0..<256).map { byte in
    (0..<8).reduce(UInt32(byte)) { crc, _ in crc & 1 == 1 ? 0xedb8_8320 ^ (crc >> 1) : crc >> 1 }
}

private func crc32(_ data: [UInt8]) -> UInt32 {
    ~data.reduce(UInt32.max) { crc, byte in remainders[Int((crc ^ UInt32(byte)) & 0xff)] ^ (crc >> 8) }
}
