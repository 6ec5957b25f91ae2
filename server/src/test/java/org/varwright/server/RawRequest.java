package org.varwright.server;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;

/** HTTP by hand: the client of the JDK does not let a test lie about the host, nor send a path that no page would. */
record RawRequest(String address) {
    /** What came back, head and body. */
    record Answer(int status, String text) {}

    /** Sends a request line with one more header. */
    Answer send(String request, String header, String body) throws IOException {
        int port = Integer.parseInt(address.replaceAll(".*:(\\d+)/", "$1"));
        String host = header.startsWith("Host:") ? "" : "Host: 127.0.0.1:" + port + "\r\n";
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            String head = request + "\r\n" + host + header + "\r\nIf-None-Match: *\r\nContent-Length: " + bytes.length
                    + "\r\nConnection: close\r\n\r\n";
            socket.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().write(bytes);
            socket.getOutputStream().flush();
            String text = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return new Answer(Integer.parseInt(text.substring(9, 12)), text);
        }
    }

    /** What came back, nothing where the connection was only closed. */
    String sendAnything(String request, String header, String body) throws IOException {
        int port = Integer.parseInt(address.replaceAll(".*:(\\d+)/", "$1"));
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(5_000);
            String head = request + "\r\nHost: 127.0.0.1:" + port + "\r\n" + header + "\r\nContent-Length: "
                    + bytes.length + "\r\nConnection: close\r\n\r\n";
            socket.getOutputStream().write(head.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().write(bytes);
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        } catch (SocketException reset) {
            return "";
        }
    }
}
