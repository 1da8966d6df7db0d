package org.lensward.flow;

import io.netty.buffer.ByteBuf;
import io.netty.buffer.ByteBufUtil;
import io.netty.buffer.Unpooled;
import io.netty.channel.ChannelHandler;
import io.netty.channel.ChannelHandlerContext;
import io.netty.handler.codec.DelimiterBasedFrameDecoder;
import io.netty.handler.codec.TooLongFrameException;
import org.apache.camel.component.netty.ChannelHandlerFactory;
import org.apache.camel.component.netty.DefaultChannelHandlerFactory;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes messages out of a stream, however many stand in one packet and however they are cut. Camel's own MLLP consumer forgets what
 * follows a message in the same read, so a sender that does not wait for each answer would lose messages.
 */
final class MllpDecoder extends DelimiterBasedFrameDecoder {

    private static final Logger LOG = LoggerFactory.getLogger(MllpDecoder.class);
    private static final byte START = 0x0b;
    private static final byte[] END = {0x1c, 0x0d};

    private MllpDecoder(int longest) {
        super(longest, Unpooled.wrappedBuffer(END));
    }

    /** One for each connection. */
    static ChannelHandlerFactory upTo(int longest) {
        return new DefaultChannelHandlerFactory() {
            @Override
            public ChannelHandler newChannelHandler() {
                return new MllpDecoder(longest);
            }
        };
    }

    @Override
    protected @Nullable Object decode(ChannelHandlerContext context, ByteBuf stream) throws Exception {
        ByteBuf frame = (ByteBuf) whole(context, stream);
        if (frame == null) {
            return null;
        }
        try {
            int start = frame.bytesBefore(START);
            frame.skipBytes(start + 1); // without a start all of it is answered, as unreadable
            return ByteBufUtil.getBytes(frame);
        } finally {
            frame.release();
        }
    }

    private @Nullable Object whole(ChannelHandlerContext context, ByteBuf stream) throws Exception {
        try {
            return super.decode(context, stream);
        } catch (TooLongFrameException tooLong) {
            LOG.warn(
                    "A message is longer than lensward.hl7.longest allows; its connection is closed without an answer");
            throw tooLong;
        }
    }
}
