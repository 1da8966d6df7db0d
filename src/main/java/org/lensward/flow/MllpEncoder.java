package org.lensward.flow;

import io.netty.buffer.ByteBuf;
import io.netty.channel.ChannelHandler;
import io.netty.channel.ChannelHandlerContext;
import io.netty.handler.codec.MessageToByteEncoder;
import org.apache.camel.component.netty.ChannelHandlerFactory;
import org.apache.camel.component.netty.DefaultChannelHandlerFactory;

/** Puts an answer between the bytes that MLLP sets around it. */
final class MllpEncoder extends MessageToByteEncoder<byte[]> {

    /** One for each connection. */
    static ChannelHandlerFactory each() {
        return new DefaultChannelHandlerFactory() {
            @Override
            public ChannelHandler newChannelHandler() {
                return new MllpEncoder();
            }
        };
    }

    @Override
    protected void encode(ChannelHandlerContext context, byte[] message, ByteBuf stream) {
        stream.writeByte(0x0b).writeBytes(message).writeByte(0x1c).writeByte(0x0d);
    }
}
